import type { BarRange } from "../../geometry/barCells.ts";

/** A loop in words: "Bar 3", "Bars 3 to 6". */
export const loopName = ({ firstBar, lastBar }: BarRange): string =>
  firstBar === lastBar ? `Bar ${firstBar + 1}` : `Bars ${firstBar + 1} to ${lastBar + 1}`;
