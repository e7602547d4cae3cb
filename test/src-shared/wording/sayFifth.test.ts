import { expect, test } from "vitest";
import { makeChord } from "../../../src-shared/harmony/makeChord.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { fret } from "../../../src-shared/units.ts";
import { sayFifth } from "../../../src-shared/wording/sayFifth.ts";

const open = neckFor(tunings[0], fret(0));
const capoed = neckFor(tunings[0], fret(2));

test("the open fifth string fits the chords that have its note", () => {
  // G belongs to G, C, Em and Eb; A (two frets up) to A, D and F#m: the tones of each triad.
  for (const [root, quality] of [
    ["G", ""],
    ["C", ""],
    ["E", "m"],
    ["Eb", ""],
  ] as const) {
    expect(sayFifth(makeChord(root, quality), open)).toBeNull();
  }
  for (const [root, quality] of [
    ["A", ""],
    ["D", ""],
    ["F#", "m"],
  ] as const) {
    expect(sayFifth(makeChord(root, quality), capoed)).toBeNull();
  }
});

test("the open fifth string is named where it clashes", () => {
  expect(sayFifth(makeChord("A", "7"), open)).toBe(null);
  expect(sayFifth(makeChord("D", ""), open)).toBe("Leave the 5th string out: G is not in D");
  expect(sayFifth(makeChord("F#", ""), open)).toBe("Leave the 5th string out: G is not in F#");
  expect(sayFifth(makeChord("G", ""), capoed)).toBe("Leave the 5th string out: A is not in G");
});
