import { seconds } from "../../src-shared/units.ts";
import type { Timbre } from "./pluckedString.ts";

/** How the plucked instruments sound. Set by measurement and from memory, no published source. */

/** Bright at once and soon gone; under it the head, whose modes are short. */
export const banjoTimbre: Timbre = {
  length: seconds(1.6),
  ring: seconds(1.5),
  brightRing: seconds(0.3),
  pickedAt: 0.13,
  pick: seconds(0.0002),
  noise: 0.1,
  body: [
    { hz: 310, q: 6, amount: 0.3 },
    { hz: 520, q: 4, amount: 0.4 },
    { hz: 880, q: 6, amount: 0.25 },
    { hz: 1350, q: 4, amount: 0.3 },
    { hz: 2900, q: 2, amount: 0.45 },
  ],
  scrape: { amount: 0.12, hz: 4500, lasts: seconds(0.012) },
};

/**
 * An upright bass plucked with the flesh of the finger: a thump, then the string and its box. Its
 * box answers the second to fourth harmonic, which a small speaker gives where it loses the first.
 */
export const bassTimbre: Timbre = {
  length: seconds(1.4),
  ring: seconds(2),
  brightRing: seconds(0.1),
  pickedAt: 0.2,
  pick: seconds(0.0026),
  noise: 0.03,
  body: [
    { hz: 62, q: 1.2, amount: 0.8 },
    { hz: 105, q: 1.6, amount: 0.9 },
    { hz: 215, q: 2, amount: 0.6 },
  ],
  scrape: { amount: 0.2, hz: 700, lasts: seconds(0.03) },
};

/** A chord damped as soon as it is struck: half pitch, half the noise of pick and windings. */
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
  scrape: { amount: 0.6, hz: 3200, lasts: seconds(0.07) },
};

/** A flat-top guitar strummed with a pick: a round box under steel. */
export const guitarTimbre: Timbre = {
  length: seconds(1.4),
  ring: seconds(2.4),
  brightRing: seconds(0.35),
  pickedAt: 0.21,
  pick: seconds(0.0004),
  noise: 0.1,
  body: [
    { hz: 105, q: 3, amount: 0.5 },
    { hz: 205, q: 3, amount: 0.6 },
    { hz: 410, q: 3, amount: 0.3 },
    { hz: 2400, q: 1.5, amount: 0.3 },
  ],
  scrape: { amount: 0.18, hz: 3800, lasts: seconds(0.03) },
};
