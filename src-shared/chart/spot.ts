import type { Diagnostic, TextPlace } from "../diagnostic.ts";

/** A stretch of a chart's text: where it starts (characters from 0) and how long it is. */
export type Spot = {
  readonly offset: number;
  readonly length: number;
  /** Counted from 1, both. */
  readonly line: number;
  readonly column: number;
};

/** One line of a text without its line break. */
export type TextLine = {
  readonly text: string;
  /** Where it starts, in characters of the whole text. */
  readonly offset: number;
  /** Counted from 1. */
  readonly line: number;
};

/**
 * A text as lines. LF, CR LF and CR each end one; the last line has no break.
 * @example textLines("G\nC").map((line) => line.offset) // => [0, 2]
 */
export const textLines = (text: string): readonly TextLine[] => {
  const lines: TextLine[] = [];
  const breaks = /\r\n|\n|\r/g;
  let offset = 0;
  for (const found of text.matchAll(breaks)) {
    lines.push({ text: text.slice(offset, found.index), offset, line: lines.length + 1 });
    offset = found.index + found[0].length;
  }
  lines.push({ text: text.slice(offset), offset, line: lines.length + 1 });
  return lines;
};

/**
 * A stretch of a line, from a column counted from 0.
 * @example spotIn({ text: "G C", offset: 9, line: 2 }, 2, 1) // => { offset: 11, length: 1, line: 2, column: 3 }
 */
export const spotIn = (line: TextLine, from: number, length: number): Spot => ({
  offset: line.offset + from,
  length,
  line: line.line,
  column: from + 1,
});

/**
 * A spot as a diagnostic names it.
 * @example placeOf({ offset: 11, length: 1, line: 2, column: 3 }) // => { line: 2, column: 3, length: 1 }
 */
export const placeOf = (spot: Spot): TextPlace => ({
  line: spot.line,
  column: spot.column,
  length: Math.max(1, spot.length),
});

/** Everything that can be wrong with a chart, by code. */
export type ChartCode =
  | "bad-capo"
  | "bad-ending"
  | "bad-form"
  | "bad-key"
  | "bad-label"
  | "bad-meter"
  | "bad-tempo"
  | "bad-tuning"
  | "empty-bar"
  | "empty-section"
  | "field-twice"
  | "figure-is-degree"
  | "no-bar-before"
  | "no-repeat"
  | "not-chords"
  | "open-repeat"
  | "reduced"
  | "section-unplayed"
  | "stray-mark"
  | "too-many-notes"
  | "too-many-plays"
  | "too-long"
  | "uneven-bar"
  | "unknown-chord"
  | "unknown-field"
  | "wrong-length";

/** An error at a spot. */
export const errorAt = (spot: Spot, code: ChartCode, says: string, advice: string): Diagnostic => ({
  severity: "error",
  code,
  at: placeOf(spot),
  says,
  try: advice,
});

/** A hint at a spot. */
export const hintAt = (spot: Spot, code: ChartCode, says: string, advice: string): Diagnostic => ({
  ...errorAt(spot, code, says, advice),
  severity: "hint",
});
