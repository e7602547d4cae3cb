import type { Fret } from "../units.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { Problem } from "./problem.ts";

/** A stretch of positions, both ends included. */
export type Stretch = { readonly low: Fret; readonly high: Fret };

/** How many frets lie between the ends of a stretch. */
export const spanOf = ({ low, high }: Stretch): number => high - low;

/** Whether a voicing's position lies within a stretch. */
export const isIn = ({ low, high }: Stretch, { position }: Voicing): boolean =>
  position >= low && position <= high;

/**
 * The stretches from one position of the problem's voicings to another in which every slot has a
 * voicing left, the narrowest first, then the lowest.
 */
export const stretchesOf = ({ slots, voicings, layers }: Problem): readonly Stretch[] => {
  // Slots of one chord mostly have the same array of what is open: each is looked at once.
  const different = new Map<Uint8Array, readonly Voicing[]>();
  for (let slot = 0; slot < slots.length; slot += 1) {
    different.set(layers.open(slot), voicings[slot] ?? []);
  }
  const left = [...different].map(([open, all]) => all.filter((_, state) => open[state] === 1));
  const positions = [...new Set(left.flatMap((some) => some.map(({ position }) => position)))];
  return positions
    .flatMap((low) => positions.filter((high) => high >= low).map((high) => ({ low, high })))
    .filter((stretch) => left.every((some) => some.some((voicing) => isIn(stretch, voicing))))
    .toSorted((a, b) => spanOf(a) - spanOf(b) || a.low - b.low);
};
