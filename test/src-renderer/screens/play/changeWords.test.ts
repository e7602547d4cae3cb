import { describe, expect, test } from "vitest";
import {
  changeAt,
  changeWords,
  lanesLabel,
  pipsTo,
} from "../../../../src-renderer/screens/play/changeWords.ts";
import { pinsChosen } from "../../../../src-renderer/screens/play/placePins.ts";
import { chartToScore } from "../../../../src-shared/chartToScore.ts";
import { newSongSettings, type PlanSettings } from "../../../../src-shared/settings.ts";
import { tick } from "../../../../src-shared/units.ts";

const BAR = 1920;
const walkOf = (bars: string, plan: Partial<PlanSettings> = {}) =>
  chartToScore(`Title: Towpath\nKey: G\n${bars}\n`, { ...newSongSettings.plan, ...plan }, null);

const dOnly = walkOf("| G | G | C | N.C. | D | G |", { shapes: ["D"], fretHigh: 16 });
const wordsAt = (at: number, placement: number, loop: readonly [number, number] | null = null) => {
  const span = loop && { start: tick(loop[0] * BAR), end: tick(loop[1] * BAR) };
  const moment = { tick: at, placement, loop: span, length: dOnly.timeline.length };
  return changeWords(dOnly, changeAt(dOnly, moment), at, loop?.[0] ?? 0);
};

describe("the heading over the neck", () => {
  // D shape: G root at fret 8, C at 13, so the index finger at 7 and 12 (common practice, no
  // published source).
  test("names the chord, the next one and the way there", () => {
    expect(wordsAt(0, 0)).toMatchObject({
      now: "G",
      nowDetail: "D shape, fret 7",
      next: "C",
      nextDetail: "Up 5 to the D shape",
      way: "Up 5",
    });
  });

  test("says which chords the open fifth string is not in", () => {
    expect(wordsAt(0, 0).fifth).toBe("");
    // Open g: the root of G, the fifth of C; D is D, F# and A.
    expect(wordsAt(4 * BAR, 2).fifth).toBe("Leave the 5th string out: G is not in D");
    expect(wordsAt(3 * BAR, -1).fifth).toBe("");
  });

  test("says in a silence where the hand goes next", () => {
    expect(wordsAt(3 * BAR, -1)).toMatchObject({
      now: "N.C.",
      nowDetail: "The hand rests",
      next: "D",
      nextDetail: "D shape, fret 14",
      way: null,
    });
  });

  test("says at a loop's end which bar it goes back to", () => {
    expect(wordsAt(2 * BAR, 1, [1, 3])).toMatchObject({
      next: "G",
      nextDetail: "Back to bar 2: D shape",
      way: "Down 5",
    });
  });

  test("points nowhere when the last chord leads into the same grip again", () => {
    expect(wordsAt(5 * BAR, 3, [0, 6])).toMatchObject({
      next: "G",
      nextDetail: "Stay in the D shape",
      way: null,
    });
  });

  test("says that nothing comes after the last chord of a song played once", () => {
    expect(wordsAt(5 * BAR, 3)).toMatchObject({ next: null, nextDetail: "To the end", way: null });
  });

  test("still names the chord where the settings allow no route", () => {
    const none = walkOf("| G | D |", { shapes: ["F"], fretLow: 20, fretHigh: 22 });
    const moment = { tick: BAR, placement: -1, loop: null, length: none.timeline.length };
    const change = changeAt(none, moment);
    expect(none.route).toBeNull();
    expect(changeWords(none, change, BAR, 0)).toMatchObject({ now: "D", nowDetail: "No route" });
    expect(pipsTo(none, change, BAR).total).toBe(0);
  });
});

describe("how a change is made", () => {
  const at = (tempo: number) => {
    const plan: PlanSettings = { ...newSongSettings.plan, shapes: ["D"], fretHigh: 16 };
    return chartToScore("Title: Towpath\nKey: G\nTime: 4/4\n| G | C | C |\n", plan, tempo);
  };
  const wordsOf = (walk: ReturnType<typeof at>) => {
    const moment = { tick: 0, placement: 0, loop: null, length: walk.timeline.length };
    return changeWords(walk, changeAt(walk, moment), 0, 0);
  };

  test("stands under the way there", () => {
    expect(wordsOf(at(60))).toMatchObject({ manner: "Keep every note", tooFast: false });
    expect(lanesLabel(at(60))).not.toContain("Too fast");
  });

  test("is plain where it is too fast, also for those who hear the lanes read out", () => {
    const walk = at(300);
    expect(wordsOf(walk).tooFast).toBe(true);
    expect(wordsOf(walk).manner).toMatch(/^Too fast at this tempo: up to \d+$/);
    expect(wordsOf(walk).label).toMatch(/Too fast at this tempo: up to \d+\.$/);
    expect(lanesLabel(walk)).toContain("Too fast at this tempo: G to C in bar 2");
  });
});

describe("the chord held now", () => {
  test("says where the bass has its root, and that it is pinned", () => {
    const before = walkOf("| F#m7b5 |");
    const voicing = before.route?.placements[0]?.voicing;
    const moment = { tick: 0, placement: 0, loop: null, length: before.timeline.length };
    if (!voicing) throw new Error("no route");
    const rootless = /shape, fret \d+, no root: the bass has it$/;
    expect(changeWords(before, changeAt(before, moment), 0, 0).nowDetail).toMatch(rootless);
    const pins = pinsChosen(before, 0, voicing, "every time");
    const pinned = walkOf("| F#m7b5 |", { pins });
    expect(changeWords(pinned, changeAt(pinned, moment), 0, 0).nowDetail).toMatch(
      /fret \d+, pinned, no root: the bass has it$/,
    );
  });
});

test("in 6/8 the beats until the change are dotted quarters, two to a bar", () => {
  const jig = chartToScore("Time: 6/8\n| G . . C . . | D | G |", newSongSettings.plan, null);
  const pipsAt = (at: number, placement: number) => {
    const moment = { tick: at, placement, loop: null, length: jig.timeline.length };
    const { total, filled } = pipsTo(jig, changeAt(jig, moment), at);
    return [total, filled];
  };
  // G for one beat, C for one, D for two from the second bar on; a beat is three eighths, 720 ticks.
  expect(pipsAt(0, 0)).toEqual([1, 1]);
  expect(pipsAt(720, 1)).toEqual([1, 1]);
  expect(pipsAt(1440, 2)).toEqual([2, 1]);
  expect(pipsAt(1440 + 720, 2)).toEqual([2, 2]);
});

describe("the beats until the change", () => {
  const pipsAt = (at: number, placement: number) => {
    const moment = { tick: at, placement, loop: null, length: dOnly.timeline.length };
    return pipsTo(dOnly, changeAt(dOnly, moment), at);
  };

  test("fill one by one, the present beat counted, until all are full on the last", () => {
    const filled = [0, 1, 2, 3, 4, 5, 6, 7].map((beat) => pipsAt(beat * 480, 0).filled);
    expect(filled).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(pipsAt(7 * 480, 0)).toMatchObject({ total: 8, label: "1 beat left" });
  });

  test("are those of the stay: four in a bar of 4/4", () => {
    expect(pipsAt(4 * BAR, 2).total).toBe(4);
  });

  test("are the last eight of a longer stay, empty until then", () => {
    const long = walkOf("| G | G | G | C |");
    const moment = { tick: 0, placement: 0, loop: null, length: long.timeline.length };
    const change = changeAt(long, moment);
    expect(pipsTo(long, change, 0)).toMatchObject({ total: 8, filled: 0, label: "12 beats left" });
    expect(pipsTo(long, change, BAR).filled).toBe(1);
  });
});
