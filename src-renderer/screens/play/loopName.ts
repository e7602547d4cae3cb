import { words } from "../../../src-shared/wordTable.ts";
import type { BarRange } from "../../geometry/barCells.ts";

/** A loop in words: "Bar 3", "Bars 3 to 6". */
export const loopName = ({ firstBar, lastBar }: BarRange): string =>
  firstBar === lastBar
    ? words.play.inBar(firstBar + 1)
    : words.play.inBars(firstBar + 1, lastBar + 1);
