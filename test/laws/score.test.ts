import fc from "fast-check";
import { Note, Chord as TonalChord } from "tonal";
import { describe, expect, test } from "vitest";
import { chartToScore, type Walk } from "../../src-shared/chartToScore.ts";
import type { Manner, Picking } from "../../src-shared/roll/picking.ts";
import {
  aims,
  handNames,
  type PlanSettings,
  stringSets,
  wholeNeckPlan,
} from "../../src-shared/settings.ts";
import { anyManners, anyPicking, dealtOut } from "./anyPicking.ts";

const chord = fc
  .tuple(
    fc.constantFrom("C", "D", "Eb", "F#", "G", "A", "Bb"),
    fc.constantFrom("", "m", "7", "m7", "maj7", "6", "dim", "aug", "sus4", "m7b5", "dim7"),
  )
  .map((parts) => parts.join(""));

/** A chart of whole and half bars. */
const anyChart = fc
  .tuple(
    fc.constantFrom("4/4", "3/4", "2/2", "2/4", "6/8", "9/8"),
    fc.integer({ min: 40, max: 160 }),
    fc.array(fc.array(chord, { minLength: 1, maxLength: 2 }), { minLength: 1, maxLength: 8 }),
  )
  .map(
    ([time, tempo, bars]) =>
      `Time: ${time}  Tempo: ${tempo}\n| ${bars.map((chords) => chords.join(" ")).join(" | ")} |`,
  );

const anyPlan = fc
  .record({
    aim: fc.constantFrom(...aims),
    strings: fc.constantFrom(...stringSets),
    hand: fc.constantFrom(...handNames),
    perChord: fc.constantFrom(1 as const, 2 as const),
    goesRound: fc.boolean(),
    alike: fc.boolean(),
  })
  .map((drawn) => ({ ...wholeNeckPlan, ...drawn }));

const anyMixed = fc.record({ picking: anyPicking, manners: anyManners });

/** A walk in which each chord is picked in a manner of its own. */
const mixedWalk = (
  text: string,
  plan: PlanSettings,
  { picking, manners }: { readonly picking: Picking; readonly manners: readonly Manner[] },
): Walk => {
  const { slots } = chartToScore(text, plan, null);
  return chartToScore(text, plan, null, dealtOut(picking, slots, manners));
};

describe("every score", () => {
  test("sounds only tones that tonal finds in the chord of the moment, on frets of its placement", () => {
    fc.assert(
      fc.property(anyChart, anyPlan, anyPicking, (text, plan, picking) => {
        const { score, route } = chartToScore(text, plan, null, picking);
        for (const note of score.notes) {
          const placement = route?.placements[note.placement];
          const name = placement?.chord.name ?? "";
          const tones = TonalChord.get(name).notes.map((each) => Note.chroma(each));
          expect(tones, name).toContain(note.midi % 12);
          const stopped = placement?.voicing.frets[(note.string - 1) as 0 | 1 | 2 | 3];
          expect(note.fret).toBe(note.string === 5 ? 0 : stopped);
        }
      }),
      { numRuns: 120 },
    );
    expect.hasAssertions();
  });

  test("strikes once on every eighth of every chord, in order, and sounds no note backwards", () => {
    fc.assert(
      fc.property(anyChart, anyPlan, (text, plan) => {
        const { score, route } = chartToScore(text, plan, null);
        fc.pre(route !== null);
        const ticks = [...new Set(score.notes.map((note) => note.tick))];
        expect(ticks).toEqual(ticks.toSorted((a, b) => a - b));
        expect(ticks.length * 240).toBe(score.length);
        for (const { tick, until, glide, letGo } of score.notes) {
          expect(until).toBeGreaterThan(tick);
          expect(glide === null || (glide.start > tick && glide.end > glide.start)).toBe(true);
          expect(letGo && until - tick > 60).toBe(false);
        }
      }),
      { numRuns: 120 },
    );
  });

  test("fills every chord with notes and rests, and strikes no string twice at once", () => {
    fc.assert(
      fc.property(anyChart, anyPlan, anyMixed, (text, plan, mixed) => {
        const { score, route } = mixedWalk(text, plan, mixed);
        fc.pre(route !== null);
        for (const { index, start, length } of route?.placements ?? []) {
          const own = score.notes.filter((note) => note.placement === index);
          const strokes = [...new Map(own.map(({ tick, ticks }) => [tick, ticks]))];
          expect(strokes[0]?.[0]).toBe(start);
          // A stroke lasts to the next one, a damped one for an eighth; the rest is rests.
          const ends = [...strokes.slice(1).map(([tick]) => tick), start + length];
          for (const [at, [tick, ticks]] of strokes.entries()) {
            const damped = own.some((note) => note.tick === tick && note.damped);
            expect(ticks).toBe(damped ? 240 : (ends[at] ?? 0) - tick);
          }
          const struck = own.map(({ tick, string }) => `${tick} ${string}`);
          expect(new Set(struck).size).toBe(struck.length);
        }
      }),
      { numRuns: 120 },
    );
    expect.hasAssertions();
  });

  test("never lets the open fifth string go, nor has the hand slide it", () => {
    fc.assert(
      fc.property(anyChart, anyPlan, anyPicking, (text, plan, picking) => {
        const { notes } = chartToScore(text, plan, null, picking).score;
        const drones = notes.filter(({ string }) => string === 5);
        expect(drones.every(({ letGo, glide, slideInto }) => !letGo && !glide && !slideInto)).toBe(
          true,
        );
        expect(picking.fifth === "never" && drones.length > 0).toBe(false);
      }),
      { numRuns: 120 },
    );
  });

  test("never strikes with a finger that has struck on the eighth before", () => {
    fc.assert(
      fc.property(anyChart, anyPlan, anyMixed, (text, plan, mixed) => {
        const { score } = mixedWalk(text, plan, mixed);
        const fingers = new Map<number, Set<string>>();
        for (const { tick, finger } of score.notes) {
          fingers.set(tick, (fingers.get(tick) ?? new Set()).add(finger));
        }
        for (const [tick, now] of fingers) {
          const before = fingers.get(tick - 240) ?? new Set();
          expect([...now].filter((finger) => before.has(finger))).toEqual([]);
        }
      }),
      { numRuns: 120 },
    );
    expect.hasAssertions();
  });
});
