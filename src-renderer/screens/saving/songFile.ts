import type { Walk } from "../../../src-shared/chartToScore.ts";
import { writeMidi } from "../../../src-shared/exchange/writeMidi.ts";
import { writeMusicXml } from "../../../src-shared/exchange/writeMusicXml.ts";
import { writeTablature } from "../../../src-shared/exchange/writeTablature.ts";
import { shapeWords } from "../../../src-shared/wording/sayShape.ts";
import type { SongFileKind } from "./songFileTable.ts";

/** A song as a file of this kind: what is in it. `text` is its chart as written. */
export const songFile = (
  kind: SongFileKind,
  walk: Walk,
  text: string,
): string | Uint8Array<ArrayBuffer> => {
  switch (kind) {
    case "musicxml":
      return writeMusicXml(walk, { notation: false });
    case "notation":
      return writeMusicXml(walk, { notation: true });
    case "midi":
      return Uint8Array.from(writeMidi(walk));
    case "tablature":
      return writeTablature(walk, ({ voicing }) => shapeWords(voicing, walk.neck.tuning).says);
    case "chart":
      return text;
  }
};
