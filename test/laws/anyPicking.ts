import fc from "fast-check";
import {
  densities,
  fifthUses,
  type Picking,
  plainPicking,
  styleNames,
} from "../../src-shared/roll/picking.ts";

/** How a whole song is picked: any style at any density, with any use of the fifth string. */
export const anyPicking: fc.Arbitrary<Picking> = fc
  .record({
    style: fc.constantFrom(...styleNames),
    density: fc.constantFrom(...densities),
    fifth: fc.constantFrom(...fifthUses),
  })
  .map(({ style, density, fifth }) => ({ ...plainPicking, song: { style, density }, fifth }));

/** As above, with other manners for the chords at the start of some bars. */
export const anyMixedPicking: fc.Arbitrary<Picking> = fc
  .tuple(
    anyPicking,
    fc.array(fc.tuple(fc.nat(7), fc.constantFrom("C", "G", "A", "D7", "Em"), anyPicking), {
      maxLength: 8,
    }),
  )
  .map(([picking, others]) => ({
    ...picking,
    stays: others.map(([bar, chord, { song }]) => ({
      bar,
      eighth: 0,
      time: null,
      chord,
      manner: song,
    })),
  }));
