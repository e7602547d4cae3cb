/// <reference path="./fontkit.d.ts" />
import { create } from "fontkit";
import { type Face, type FontName, type FontRow, fontTable } from "./fontTable.ts";

/** A font file as it was read. */
export type FontFile = { readonly name: FontName; readonly bytes: Uint8Array };

/** A stretch of text that one font has. */
export type Run = { readonly font: FontName; readonly text: string };

/** What the bundled fonts say of a text. */
export type Typefaces = {
  /** The text cut where its font changes; a character that no font has becomes a question mark. */
  readonly runs: (text: string, face: Face) => readonly Run[];
  /** How wide a run is, in points, at a size in points. */
  readonly widthOf: (run: Run, size: number) => number;
  /** The characters that no font has, each once. */
  readonly missing: (text: string) => readonly string[];
};

type Opened = { readonly row: FontRow; readonly font: ReturnType<typeof create> };

/** What cannot be seen takes no place on paper but that of a space. */
const unseen = /[\p{Cc}\p{Cf}\p{Zs}\p{Zl}\p{Zp}]+/gu;
const MISSING = "?";

/** Opens the fonts of `fontTable`, all of them; a missing one is a bug and throws. */
export const openTypefaces = (files: readonly FontFile[]): Typefaces => {
  const opened = fontTable.map((row): Opened => {
    const file = files.find(({ name }) => name === row.name);
    if (file === undefined) throw new RangeError(`the font ${row.name} was not given`);
    return { row, font: create(file.bytes) };
  });
  const byName = new Map(opened.map((each) => [each.row.name, each.font]));
  const fontOf = (sign: string, face: Face): FontName | null => {
    const point = sign.codePointAt(0) ?? 0;
    const found = opened.find(
      ({ row, font }) =>
        (row.face === face || row.face === null) && font.hasGlyphForCodePoint(point),
    );
    return found?.row.name ?? null;
  };
  const plain = (text: string): string => text.normalize("NFC").replaceAll(unseen, " ");
  return {
    runs: (text, face) => {
      const runs: Run[] = [];
      for (const sign of plain(text)) {
        const font = fontOf(sign, face);
        const last = runs.at(-1);
        const own = font ?? `latin-${face === "text" ? 400 : 600}`;
        const shown = font === null ? MISSING : sign;
        if (last?.font === own) {
          runs[runs.length - 1] = { font: own, text: last.text + shown };
        } else {
          runs.push({ font: own, text: shown });
        }
      }
      return runs;
    },
    widthOf: ({ font, text }, size) => {
      const own = byName.get(font);
      if (own === undefined) throw new RangeError(`no font ${font} is open`);
      return (own.layout(text).advanceWidth * size) / own.unitsPerEm;
    },
    missing: (text) => [...new Set(plain(text))].filter((sign) => fontOf(sign, "text") === null),
  };
};
