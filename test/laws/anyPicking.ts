import fc from "fast-check";
import {
  densities,
  fifthUses,
  type Manner,
  type Picking,
  plainPicking,
  styleNames,
} from "../../src-shared/roll/picking.ts";
import type { Slot } from "../../src-shared/route/slot.ts";

/** How a whole song is picked: any style at any density, with any use of the fifth string. */
export const anyPicking: fc.Arbitrary<Picking> = fc
  .record({
    style: fc.constantFrom(...styleNames),
    density: fc.constantFrom(...densities),
    fifth: fc.constantFrom(...fifthUses),
  })
  .map(({ style, density, fifth }) => ({ ...plainPicking, song: { style, density }, fifth }));

/** Manners to deal out over the chords of a song. */
export const anyManners: fc.Arbitrary<readonly Manner[]> = fc.array(
  anyPicking.map(({ song }) => song),
  { minLength: 1, maxLength: 5 },
);

/** The picking with each of the song's chords in a manner of its own. */
export const dealtOut = (
  picking: Picking,
  slots: readonly Slot[],
  manners: readonly Manner[],
): Picking => ({
  ...picking,
  stays: slots.flatMap(({ written, eighth, chord }, index) => {
    const manner = manners[index % manners.length];
    return manner ? [{ bar: written, eighth, time: null, chord: chord.name, manner }] : [];
  }),
});
