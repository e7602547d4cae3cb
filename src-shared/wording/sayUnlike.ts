import type { BarText } from "../chart/readChart.ts";
import type { Diagnostic } from "../diagnostic.ts";
import type { Slot } from "../route/slot.ts";
import { words } from "../wordTable.ts";
import { placeOfBar } from "./placeOfBar.ts";

/**
 * That a route is not the same each time though it was to be: the first slot held otherwise than
 * before, at its bar.
 */
export const sayUnlike = (slot: Slot, bar: BarText | undefined): Diagnostic => ({
  severity: "hint",
  code: "not-alike",
  at: placeOfBar(bar),
  says: words.notes.unlike.says(slot.chord.name, slot.bar + 1),
  try: words.notes.unlike.try,
});
