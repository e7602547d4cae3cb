import { eighthsOfMeter, isBeat } from "../../src-shared/roll/beats.ts";
import { fingersAt, voicedStrings } from "../../src-shared/roll/editPattern.ts";
import type { Pattern, VoicedString } from "../../src-shared/roll/pattern.ts";

/** A line of the pattern's grid: a string, or the marks under the strings. */
export type GridRow = VoicedString | "accent" | "damped";

/** A place in the pattern's grid; `eighth` counts from 0. */
export type GridCell = { readonly eighth: number; readonly row: GridRow };

/** The grid's lines from the top: the strings as tablature has them, then the marks. */
export const rowsFor = (pattern: Pattern, strings: 3 | 4): readonly GridRow[] => {
  const usesFourth = pattern.strokes.some(({ picks }) => picks.some(({ on }) => on === 4));
  return [
    ...voicedStrings.filter((on) => on !== 4 || strings === 4 || usesFourth),
    "accent",
    "damped",
  ];
};

/** Where the arrows lead from a cell; stays within the grid. */
export const cellFrom = (
  cell: GridCell,
  by: { readonly eighths: number; readonly rows: number },
  rows: readonly GridRow[],
  eighths: number,
): GridCell => {
  const within = (at: number, count: number): number => Math.max(0, Math.min(at, count - 1));
  const row = rows[within(rows.indexOf(cell.row) + by.rows, rows.length)] ?? cell.row;
  return { eighth: within(cell.eighth + by.eighths, eighths), row };
};

/** The cell itself where the grid has it, else the nearest one that it has. */
export const cellWithin = (cell: GridCell, rows: readonly GridRow[], eighths: number): GridCell => {
  const row = rows.includes(cell.row) ? cell.row : (rows[2] ?? cell.row);
  return cellFrom({ ...cell, row }, { eighths: 0, rows: 0 }, rows, eighths);
};

/** A column of the pattern's grid. */
export type GridColumn = {
  readonly eighth: number;
  readonly beat: boolean;
  /** A bar line stands before it. */
  readonly bar: boolean;
  /** There is something to mend. */
  readonly broken: boolean;
  /** It sounds now. */
  readonly now: boolean;
};

/** The columns of the pattern's grid: one for each eighth. */
export const gridColumns = (
  pattern: Pattern,
  toMend: ReadonlySet<number>,
  playing: number | null,
): readonly GridColumn[] =>
  pattern.strokes.map((_, eighth) => ({
    eighth,
    beat: isBeat(pattern.meter, eighth % eighthsOfMeter[pattern.meter]),
    bar: eighth > 0 && eighth % eighthsOfMeter[pattern.meter] === 0,
    broken: toMend.has(eighth),
    now: eighth === playing,
  }));

/** Whether a line of the grid is one of the marks under the strings. */
export const isMark = (row: GridRow): row is "accent" | "damped" =>
  row === "accent" || row === "damped";

/**
 * What stands in a cell: the fingers on a string ("" where nothing is struck), or whether a mark is
 * set.
 */
export const cellText = (pattern: Pattern, { eighth, row }: GridCell): string => {
  if (isMark(row)) return pattern.strokes[eighth]?.[row] ? (row === "accent" ? ">" : "×") : "";
  return fingersAt(pattern, eighth, row).join("");
};
