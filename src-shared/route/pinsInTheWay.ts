import { type Pin, pinIsFor } from "./pins.ts";
import type { Plan } from "./planRoute.ts";

/** The pins that may be why there is no route: those that clash, or those of chords out of reach. */
export const pinsInTheWay = (plan: Plan, pins: readonly Pin[]): readonly Pin[] => {
  switch (plan.kind) {
    case "route":
      return [];
    case "clash":
      return plan.pins;
    case "unreachable":
      // Where every chord has a place, only its times can be at odds, when all are to be held alike.
      return plan.slots.length === 0
        ? pins.filter((pin) => pin.time !== null)
        : pins.filter((pin) => plan.slots.some((slot) => pinIsFor(pin, slot)));
  }
};
