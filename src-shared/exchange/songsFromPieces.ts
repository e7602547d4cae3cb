import { eighthsInBeat } from "../chart/pulse.ts";
import { plainHeader } from "../chart/readHeader.ts";
import type { Meter } from "../chart/song.ts";
import { bpm } from "../units.ts";
import { words } from "../wordTable.ts";
import { chartFromBars, type FoundHeader } from "./chartFromBars.ts";
import { followJumps } from "./followJumps.ts";
import type { FoundTune } from "./importing.ts";
import type { PlacedJump } from "./jump.ts";
import { meterParts } from "./meterParts.ts";
import type { Piece } from "./piece.ts";

/** A tune as a file has it, with what was read and left of it in words. */
export type TuneFound = {
  readonly header: Omit<FoundHeader, "meter" | "tempo">;
  /** Quarters a minute; null where none is told. */
  readonly quarters: number | null;
  readonly pieces: readonly Piece[];
  readonly jumps: readonly PlacedJump[];
  readonly read: readonly string[];
  readonly left: readonly string[];
};

const LOWEST_TEMPO = 15;
const HIGHEST_TEMPO = 320;

/**
 * A tempo in beats of the meter from one in quarters, or null where it is none a chart can have.
 * @example beatsFromQuarters(200, { beats: 2, unit: 2 }) // => 100
 */
export const beatsFromQuarters = (quarters: number, meter: Meter): number | null => {
  const beats = Math.round((quarters * 2 * 1000) / eighthsInBeat(meter)) / 1000;
  return beats >= LOWEST_TEMPO && beats <= HIGHEST_TEMPO ? beats : null;
};

/**
 * A tune as songs: one, or where its metre changes one for each part, or why there is none. Jumps are
 * followed unless the header has an order of parts, which then stands.
 */
export const songsFromPieces = (tune: TuneFound): readonly FoundTune[] => {
  const { header, quarters } = tune;
  const isBack = tune.jumps.some(({ jump }) => jump.kind === "back");
  const followed = followJumps(tune.pieces, header.form === null ? tune.jumps : []);
  const found = meterParts(followed.pieces, followed.read.length > 0);
  if (!found.ok) {
    return [{ ...found, title: header.title }];
  }
  return found.parts.map(({ meter, pieces, named, left }) => {
    const beats = quarters === null ? null : beatsFromQuarters(quarters, meter);
    const symbols = pieces.reduce((sum, piece) => sum + piece.symbols.length, 0);
    return chartFromBars(
      {
        ...header,
        // A section may lie on both sides of a change; the order is of the whole.
        form: named === "" ? header.form : null,
        title: named === "" ? header.title : `${header.title} (${named})`,
        meter,
        tempo: beats === null ? plainHeader.tempo : bpm(beats),
      },
      pieces,
      [
        words.import.symbols(symbols),
        ...tune.read,
        beats === null ? words.import.noTempo(plainHeader.tempo) : words.import.tempo(beats),
        ...followed.read,
      ],
      [
        ...left,
        ...(header.form !== null && named !== ""
          ? [words.import.order(header.form.join(" "))]
          : []),
        ...(header.form !== null && isBack ? [words.import.orderPlayed] : []),
        ...followed.left,
        ...tune.left,
      ],
    );
  });
};
