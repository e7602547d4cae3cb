import papaparse from "papaparse";
import { beatNotes } from "../chart/pulse.ts";
import type { LogEntry } from "../practice/logLine.ts";
import type { Mark } from "../practice/practice.ts";
import { words } from "../wordTable.ts";
import { sayLogged } from "./sayLogged.ts";

/**
 * What the player said of a round, in words.
 * @example sayMark(null) // => "Not marked"
 */
export const sayMark = (mark: Mark | null): string => {
  switch (mark) {
    case "clean":
      return words.progress.clean;
    case "not-yet":
      return words.progress.notYet;
    case null:
      return words.progress.unmarked;
  }
};

/**
 * The log as a table for spreadsheets: comma-separated values as RFC 4180 has them, a line for each
 * round under a line of headings, moments as ISO 8601 writes them (UTC). A text that a spreadsheet
 * would run as a formula has an apostrophe before it. `momentOf` writes ms since 1970.
 */
export const writeLogCsv = (
  entries: readonly LogEntry[],
  momentOf: (atMs: number) => string,
): string => {
  const rows = entries.map(({ song, round }) => [
    momentOf(round.atMs),
    song?.title ?? "",
    sayLogged(round.item),
    words.rehearsal.stages[round.stage],
    Math.round(round.tempo * 10) / 10,
    beatNotes({ unit: round.unit }),
    sayMark(round.mark),
    Math.round(round.lasted / 100) / 10,
  ]);
  const options = { newline: "\r\n", escapeFormulae: true };
  return `${papaparse.unparse([Object.values(words.progress.csvHeads), ...rows], options)}\r\n`;
};
