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
      return pins.filter((pin) => plan.slots.some((slot) => pinIsFor(pin, slot)));
  }
};
