import { fingersAt } from "../../src-shared/roll/editPattern.ts";
import type { Pattern } from "../../src-shared/roll/pattern.ts";
import { sayFinger, saySome } from "../../src-shared/wording/sayBreach.ts";
import { words } from "../../src-shared/wordTable.ts";
import { type GridCell, type GridRow, isMark } from "../geometry/patternCells.ts";

const names: Readonly<Record<"accent" | "damped", string>> = {
  accent: words.bench.marks.accent,
  damped: words.bench.marks.damped,
};

/** What stands before a line of the pattern's grid. */
export const rowHead = (row: GridRow): string => {
  if (isMark(row)) return names[row];
  return row === "fifth" ? words.bench.fifth : String(row);
};

/** A cell of the pattern's grid in words: "Eighth 3, string 2: index, to mend". */
export const sayCell = (pattern: Pattern, { eighth, row }: GridCell, toMend: boolean): string => {
  if (isMark(row)) {
    return words.bench.markCell(
      eighth + 1,
      names[row],
      pattern.strokes[eighth]?.[row] ?? false,
      toMend,
    );
  }
  const fingers = fingersAt(pattern, eighth, row).map(sayFinger);
  return words.bench.stringCell(eighth + 1, saySome(row), fingers, toMend);
};
