import { describe, expect, test } from "vitest";
import { handMadeScore } from "../../../e2e/sound/handMadeScore.ts";
import { momentsOfHit, momentsOfNote } from "../../../src-renderer/sound/moments.ts";
import type { Note } from "../../../src-shared/score/score.ts";
import { midi, tick } from "../../../src-shared/units.ts";

const END = tick(100_000);

const sliding = (from: number, toFret: number): Note => {
  const glide = { from: 2, to: 4, toFret };
  const [note] = handMadeScore(1, [{ at: 0, string: 3, fret: from, lasts: 6, glide }]).notes;
  if (!note) {
    throw new Error("a score of one note has none");
  }
  return note;
};

describe("what happens to a note after it was struck", () => {
  test("a slide of five frets bends it five times, the last when the hand has arrived", () => {
    const moments = momentsOfNote(sliding(5, 10), END);
    const bends = moments.filter((moment) => moment.kind === "bend");
    expect(bends.map((bend) => bend.semitones)).toEqual([1, 2, 3, 4, 5]);
    expect(bends.at(-1)?.tick).toBe(960);
    expect(moments.at(-1)).toEqual({ kind: "stop", tick: 1440 });
  });

  // Fret n lies at L (1 - 2^(-n/12)) from the nut: from fret 5 to 17 is twice the way of 17 to 29,
  // and fret 10 is 0.5017 of the way from fret 5 to fret 17 (computed from the formula).
  test("the hand goes at an even speed, so that half an octave up takes more than half the time", () => {
    const bends = momentsOfNote(sliding(5, 17), END).filter((moment) => moment.kind === "bend");
    expect(((bends[4]?.tick ?? 0) - 480) / 480).toBeCloseTo(0.5017, 3);
  });

  test("a slide down bends it down, quicker at first", () => {
    const bends = momentsOfNote(sliding(9, 7), END).filter((moment) => moment.kind === "bend");
    expect(bends.map((bend) => bend.semitones)).toEqual([-1, -2]);
    expect(bends[0]?.tick).toBeLessThan(720);
    expect(bends[1]?.tick).toBe(960);
  });

  test("nothing rings or bends beyond where the music jumps back", () => {
    expect(momentsOfNote(sliding(5, 7), tick(700))).toEqual([{ kind: "stop", tick: 700 }]);
  });

  test("a hit ends when its length is over", () => {
    const hit = {
      part: "bass",
      tick: tick(960),
      ticks: tick(480),
      pitches: [midi(31)],
      accent: true,
      level: 1,
    } as const;
    expect(momentsOfHit(hit, END)).toEqual([{ kind: "stop", tick: 1440 }]);
  });
});
