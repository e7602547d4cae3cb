import type { BarText } from "../chart/readChart.ts";
import type { Diagnostic } from "../diagnostic.ts";
import type { Slot } from "../route/slot.ts";
import { placeOfBar } from "./placeOfBar.ts";

/**
 * That a route is not the same each time though it was to be: the first slot held otherwise than
 * before, at its bar.
 */
export const sayUnlike = (slot: Slot, bar: BarText | undefined): Diagnostic => ({
  severity: "hint",
  code: "not-alike",
  at: placeOfBar(bar),
  says: `${slot.chord.name} in bar ${slot.bar + 1} is not held as it was before: the bars of this song follow each other in too many ways to plan that.`,
  try: "Pin the places that should stay the same for every time, or turn this wish off.",
});
