import { sleepingPins, withoutPins } from "../../src-shared/route/editPins.ts";
import { type Pin, pinIsFor } from "../../src-shared/route/pins.ts";
import type { Slot } from "../../src-shared/route/slot.ts";
import { sayCount } from "./facts.ts";

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
    held > 0 ? `${sayCount(held, "grip")} held` : "",
    avoided > 0 ? `${sayCount(avoided, "grip")} ruled out` : "",
    asleep > 0 ? `${sayCount(asleep, "pin")} asleep: another chord stands there now` : "",
  ];
  const words = parts.filter((part) => part !== "").join(", ") || "No pins";
  return holdsEverything(pins, slots) ? `${words}. No choice is left to the aim.` : words;
};
