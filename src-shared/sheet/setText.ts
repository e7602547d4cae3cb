import type { Face } from "./fontTable.ts";
import type { Ink, TextMark } from "./page.ts";
import type { Run, Typefaces } from "./typefaces.ts";

/** How a text is set. */
export type Type = {
  readonly face: Face;
  /** In points. */
  readonly size: number;
  readonly ink: Ink;
};

/** Text that is read first. */
export const strongType = (size: number, ink: Ink = "ink"): Type => ({ face: "strong", size, ink });

/** Text that runs on. */
export const plainType = (size: number, ink: Ink = "ink"): Type => ({ face: "text", size, ink });

/**
 * How large a sign of the music font stands beside letters, and how far above their line: its sharp
 * hangs below it, its flat is small beside a capital. Judged by eye.
 */
const fits: Readonly<Record<string, { readonly size: number; readonly lift: number }>> = {
  "♯": { size: 1, lift: 0.19 },
  "♮": { size: 1, lift: 0.19 },
  "♭": { size: 1.25, lift: 0.03 },
};
const asItIs = { size: 1, lift: 0 };
const fitOf = ({ text }: Run): typeof asItIs => fits[text] ?? asItIs;

/** The music font leaves more white at the sides of a sign than a name bears. */
const TUCK = 0.03;

const isMusic = ({ font }: Run): boolean => font === "music";

/** Signs stand closer to their letter than the music font has them; each is a run of its own. */
const apart = (runs: readonly Run[]): readonly Run[] =>
  runs.flatMap((run) =>
    isMusic(run) ? [...run.text].map((text) => ({ font: run.font, text })) : [run],
  );

type Piece = { readonly run: Run; readonly size: number; readonly width: number };

const piecesOf = (typefaces: Typefaces, text: string, { face, size }: Type): readonly Piece[] =>
  apart(typefaces.runs(text, face)).map((run) => {
    const own = isMusic(run) ? size * fitOf(run).size : size;
    return { run, size: own, width: typefaces.widthOf(run, own) };
  });

const advanceOf = ({ run, size, width }: Piece): number =>
  isMusic(run) ? width - 2 * TUCK * size : width;

/** How wide a text is on one line, in points. */
export const widthOf = (typefaces: Typefaces, text: string, type: Type): number =>
  piecesOf(typefaces, text, type).reduce((sum, piece) => sum + advanceOf(piece), 0);

/** A text on one line; `align` says which of its edges stands at x. */
export const setText = (
  typefaces: Typefaces,
  text: string,
  type: Type,
  x: number,
  y: number,
  align: "left" | "middle" | "right" = "left",
): readonly TextMark[] => {
  const pieces = piecesOf(typefaces, text, type);
  const full = pieces.reduce((sum, piece) => sum + advanceOf(piece), 0);
  const share = { left: 0, middle: 0.5, right: 1 }[align];
  let at = x - full * share;
  return pieces.map((piece): TextMark => {
    const { run, size, width } = piece;
    const lift = isMusic(run) ? fitOf(run).lift * type.size : 0;
    const left = isMusic(run) ? at - TUCK * size : at;
    at += advanceOf(piece);
    return {
      kind: "text",
      text: run.text,
      x: left,
      y: y - lift,
      width,
      font: run.font,
      size,
      ink: type.ink,
    };
  });
};

/** A word wider than the line is cut where it must be. */
const cutWord = (
  typefaces: Typefaces,
  word: string,
  type: Type,
  width: number,
): readonly string[] => {
  const parts: string[] = [];
  let part = "";
  for (const sign of word) {
    if (part !== "" && widthOf(typefaces, part + sign, type) > width) {
      parts.push(part);
      part = "";
    }
    part += sign;
  }
  return [...parts, part];
};

/** A text in lines no wider than `width` points; a line break in it stays one. */
export const wrapText = (
  typefaces: Typefaces,
  text: string,
  type: Type,
  width: number,
): readonly string[] =>
  text.split(/\r\n|\r|\n/).flatMap((paragraph) => {
    const lines: string[] = [];
    let current = "";
    for (const word of paragraph.split(/[ \t]+/).filter((each) => each !== "")) {
      const longer = current === "" ? word : `${current} ${word}`;
      if (widthOf(typefaces, longer, type) <= width) {
        current = longer;
        continue;
      }
      if (current !== "") lines.push(current);
      const parts = cutWord(typefaces, word, type, width);
      lines.push(...parts.slice(0, -1));
      current = parts.at(-1) ?? "";
    }
    return [...lines, current];
  });

/** The longest beginning of a text that fits, with an ellipsis where something is left off. */
export const cutText = (typefaces: Typefaces, text: string, type: Type, width: number): string => {
  if (widthOf(typefaces, text, type) <= width) return text;
  const signs = [...text];
  let count = signs.length;
  const cut = (): string => `${signs.slice(0, count).join("").trimEnd()}…`;
  while (count > 0 && widthOf(typefaces, cut(), type) > width) count -= 1;
  return cut();
};
