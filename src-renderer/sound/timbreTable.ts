import { seconds } from "../../src-shared/units.ts";
import type { Timbre } from "./pluckedString.ts";

/** How the plucked instruments sound. Set by measurement and from memory, no published source. */

/** Bright at once and soon gone; the head's formants stand out a little. */
export const banjoTimbre: Timbre = {
  length: seconds(1.6),
  ring: seconds(1.5),
  brightRing: seconds(0.3),
  pickedAt: 0.13,
  pick: seconds(0.0002),
  noise: 0.12,
  body: [
    { hz: 520, q: 2.5, amount: 0.4 },
    { hz: 1150, q: 3, amount: 0.3 },
    { hz: 2900, q: 2, amount: 0.4 },
  ],
};

/** An upright bass plucked with the flesh of the finger: a thump, then mostly its fundamental. */
export const bassTimbre: Timbre = {
  length: seconds(1.2),
  ring: seconds(2),
  brightRing: seconds(0.12),
  pickedAt: 0.22,
  pick: seconds(0.0012),
  noise: 0.04,
  body: [
    { hz: 105, q: 1.2, amount: 0.5 },
    { hz: 240, q: 1.5, amount: 0.6 },
  ],
};

/** A chord damped as soon as it is struck: half pitch, half noise. */
export const chopTimbre: Timbre = {
  length: seconds(0.22),
  ring: seconds(0.22),
  brightRing: seconds(0.13),
  pickedAt: 0.12,
  pick: seconds(0.0004),
  noise: 0.4,
  body: [
    { hz: 430, q: 1.5, amount: 0.4 },
    { hz: 1900, q: 1.5, amount: 0.4 },
  ],
};
