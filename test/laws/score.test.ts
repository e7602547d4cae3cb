import fc from "fast-check";
import { Note, Chord as TonalChord } from "tonal";
import { describe, expect, test } from "vitest";
import { chartToScore } from "../../src-shared/chartToScore.ts";
import { aims, handNames, stringSets, wholeNeckPlan } from "../../src-shared/settings.ts";

const chord = fc
  .tuple(
    fc.constantFrom("C", "D", "Eb", "F#", "G", "A", "Bb"),
    fc.constantFrom("", "m", "7", "m7", "maj7", "6", "dim", "aug", "sus4", "m7b5", "dim7"),
  )
  .map((parts) => parts.join(""));

/** A chart of whole and half bars. */
const anyChart = fc
  .tuple(
    fc.constantFrom("4/4", "3/4", "2/2", "2/4", "6/8"),
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

describe("every score", () => {
  test("sounds only tones that tonal finds in the chord of the moment, on frets of its placement", () => {
    fc.assert(
      fc.property(anyChart, anyPlan, (text, plan) => {
        const { score, route } = chartToScore(text, plan, null);
        for (const note of score.notes) {
          const placement = route?.placements[note.placement];
          const name = placement?.chord.name ?? "";
          const tones = TonalChord.get(name).notes.map((each) => Note.chroma(each));
          expect(tones, name).toContain(note.midi % 12);
          expect(placement?.voicing.frets[(note.string - 1) as 0 | 1 | 2 | 3]).toBe(note.fret);
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

  test("never strikes a string again while a finger of the same hand has just struck", () => {
    fc.assert(
      fc.property(anyChart, anyPlan, (text, plan) => {
        const { score } = chartToScore(text, plan, null);
        for (const [index, note] of score.notes.entries()) {
          const next = score.notes[index + 1];
          if (next && next.tick - note.tick === 240) {
            expect(next.finger).not.toBe(note.finger);
          }
        }
      }),
      { numRuns: 60 },
    );
    expect.hasAssertions();
  });
});
