import type { BarText } from "../../src-shared/chart/readChart.ts";
import type { Diagnostic } from "../../src-shared/diagnostic.ts";

/** A bar never goes on in another line, so that columns tell where it ends. */
const touches = ({ at }: Diagnostic, { start, end, line, column }: BarText): boolean =>
  at.line === line && at.column < column + (end - start) && at.column + at.length > column;

/** What is wrong in each written bar that has an error in its text, by its 0-based number. */
export const barsToMend = (
  bars: readonly BarText[],
  notes: readonly Diagnostic[],
): ReadonlyMap<number, string> => {
  const errors = notes.filter(({ severity }) => severity === "error");
  const found = new Map<number, string>();
  for (const [index, bar] of bars.entries()) {
    const says = errors.filter((note) => touches(note, bar)).map((note) => note.says);
    if (says.length > 0) found.set(index, [...new Set(says)].join(" "));
  }
  return found;
};
