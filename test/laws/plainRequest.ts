import fc from "fast-check";
import { plainPicking } from "../../src-shared/roll/picking.ts";
import { handTable } from "../../src-shared/route/handTable.ts";
import type { PlanRequest } from "../../src-shared/route/problem.ts";
import { aims } from "../../src-shared/settings.ts";
import { fret, milliseconds } from "../../src-shared/units.ts";
import { chordByTonal } from "./anyHeldSong.ts";
import { anyPicking } from "./anyPicking.ts";

/** A plain request up to a fret: ease, all shapes, once through, an eighth of 150 ms. */
export const plainRequest = (highest: number): PlanRequest => ({
  aim: "ease",
  shapes: ["F", "D", "barre"],
  range: { low: fret(1), high: fret(highest) },
  strings: "3-2-1",
  goesRound: false,
  perChord: 1,
  hand: handTable.default,
  eighth: milliseconds(150),
  alike: false,
  pins: [],
  picking: plainPicking,
  patterns: [],
});

/** A major or minor triad by its letter name, with tonal's tones. */
export const chordNamed = (name: string): ReturnType<typeof chordByTonal> =>
  chordByTonal(name.replace("m", ""), name.endsWith("m") ? "m" : "");

/** A request by any aim, with any shapes, range, hand and tempo, round or not. */
export const anyRequest: fc.Arbitrary<PlanRequest> = fc.record({
  aim: fc.constantFrom(...aims),
  shapes: fc.subarray(["F", "D", "barre"] as const, { minLength: 1 }),
  range: fc
    .tuple(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 12, max: 22 }))
    .map(([low, high]) => ({ low: fret(low), high: fret(high) })),
  goesRound: fc.boolean(),
  perChord: fc.constant(1 as const),
  hand: fc.constantFrom(...Object.values(handTable)),
  eighth: fc.integer({ min: 80, max: 400 }).map(milliseconds),
  alike: fc.constant(false),
  pins: fc.constant([]),
  strings: fc.constant("3-2-1" as const),
  picking: anyPicking,
  patterns: fc.constant([]),
});
