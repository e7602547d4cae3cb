import { sleepingPins, withoutPins } from "../../src-shared/route/editPins.ts";
import { type Pin, pinIsFor } from "../../src-shared/route/pins.ts";
import type { Slot } from "../../src-shared/route/slot.ts";
import { words } from "../../src-shared/wordTable.ts";

/** Whether every place of the song is held by a pin, so that no other route is left. */
export const holdsEverything = (pins: readonly Pin[], slots: readonly Slot[]): boolean =>
  slots.length > 0 &&
  slots.every((slot) => pins.some((pin) => pin.kind === "hold" && pinIsFor(pin, slot)));

/**
 * How many pins there are, and what they do: "4 grips held, 1 grip ruled out". One sleeps where the
 * chart has another chord now; where every place is held, an aim changes nothing.
 */
export const sayPins = (pins: readonly Pin[], slots: readonly Slot[]): string => {
  const awake = withoutPins(pins, sleepingPins(pins, slots));
  const held = awake.filter(({ kind }) => kind === "hold").length;
  const avoided = awake.length - held;
  const asleep = pins.length - awake.length;
  const parts = [
    held > 0 ? words.pins.held(held) : "",
    avoided > 0 ? words.pins.ruledOut(avoided) : "",
    asleep > 0 ? words.pins.asleep(asleep) : "",
  ];
  const said = parts.filter((part) => part !== "").join(", ") || words.pins.noneSet;
  return holdsEverything(pins, slots) ? words.pins.noChoice(said) : said;
};
