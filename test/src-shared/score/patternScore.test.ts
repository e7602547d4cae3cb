import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { makeChord } from "../../../src-shared/harmony/makeChord.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { eighthsOfMeter } from "../../../src-shared/roll/beats.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { patternScore } from "../../../src-shared/score/patternScore.ts";
import { fret, TICKS_PER_EIGHTH } from "../../../src-shared/units.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { anyPattern } from "../../laws/anyPattern.ts";

const neck = neckFor(tunings[0], fret(0));
const trialOf = (root: string) => {
  const chord = makeChord(root, "");
  const [voicing] = voicingsOf(chord, neck, { low: fret(1), high: fret(17) }, "3-2-1");
  if (!voicing) throw new Error(`no voicing of ${root}`);
  return { chord, voicing, neck };
};
const drone: Pattern = {
  name: "on trial",
  meter: "2/4",
  strokes: [
    { picks: [{ finger: "T", on: "fifth" }], accent: true, damped: false },
    { picks: [{ finger: "M", on: 1 }], accent: false, damped: true },
  ],
};

describe("a pattern by itself", () => {
  test("has the band with it: within its length, from the first beat on, with the chord's root in the bass", () => {
    fc.assert(
      fc.property(anyPattern, (pattern) => {
        const { hits, length } = patternScore(pattern, trialOf("D"));
        expect(hits.filter(({ tick }) => tick < 0 || tick >= length)).toEqual([]);
        const first = hits.find((hit) => hit.part === "bass");
        expect([first?.tick, first?.pitches.map((pitch) => pitch % 12)]).toEqual([0, [2]]);
      }),
    );
  });

  test("lasts as long as its eighths, in bars of its meter, and strikes only where it says", () => {
    fc.assert(
      fc.property(anyPattern, (pattern) => {
        const score = patternScore(pattern, trialOf("G"));
        expect(score.length).toBe(pattern.strokes.length * TICKS_PER_EIGHTH);
        expect(score.bars.reduce((sum, bar) => sum + bar.length, 0)).toBe(score.length);
        expect(score.bars).toHaveLength(
          Math.ceil(pattern.strokes.length / eighthsOfMeter[pattern.meter]),
        );
        const struck = new Set(score.notes.map(({ tick }) => tick / TICKS_PER_EIGHTH));
        expect([...struck]).toEqual(
          pattern.strokes.flatMap(({ picks }, eighth) => (picks.length > 0 ? [eighth] : [])),
        );
      }),
    );
  });

  test("strikes the open fifth string where it belongs to the chord, string 3 elsewhere", () => {
    const strings = (root: string) =>
      patternScore(drone, trialOf(root)).notes.map(({ string, finger }) => `${finger}${string}`);
    // The fifth string sounds G in open G: in the chord G, not in A.
    expect(strings("G")).toEqual(["T5", "M1"]);
    expect(strings("A")).toEqual(["T3", "M1"]);
  });

  test("keeps accents and damping", () => {
    const notes = patternScore(drone, trialOf("G")).notes;
    expect(notes.map(({ accent, damped }) => [accent, damped])).toEqual([
      [true, false],
      [false, true],
    ]);
  });
});
