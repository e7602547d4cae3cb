import { fingersAt } from "../../src-shared/roll/editPattern.ts";
import type { Pattern } from "../../src-shared/roll/pattern.ts";
import { sayFinger, saySome } from "../../src-shared/wording/sayBreach.ts";
import { type GridCell, type GridRow, isMark } from "../geometry/patternCells.ts";

const names: Readonly<Record<"accent" | "damped", string>> = { accent: "Accent", damped: "Damped" };

/** What stands before a line of the pattern's grid. */
export const rowHead = (row: GridRow): string => {
  if (isMark(row)) return names[row];
  return row === "fifth" ? "5th" : String(row);
};

/** A cell of the pattern's grid in words: "Eighth 3, string 2: index, to mend". */
export const sayCell = (pattern: Pattern, { eighth, row }: GridCell, toMend: boolean): string => {
  const mend = toMend ? ", to mend" : "";
  if (isMark(row)) {
    return `Eighth ${eighth + 1}, ${row}: ${pattern.strokes[eighth]?.[row] ? "yes" : "no"}${mend}`;
  }
  const fingers = fingersAt(pattern, eighth, row).map(sayFinger).join(" and ");
  return `Eighth ${eighth + 1}, ${saySome(row)}: ${fingers || "nothing"}${mend}`;
};
