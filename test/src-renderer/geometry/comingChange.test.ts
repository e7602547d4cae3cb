import { describe, expect, test } from "vitest";
import { beatsLeft, comingChange } from "../../../src-renderer/geometry/comingChange.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { newSongSettings } from "../../../src-shared/settings.ts";
import { tick } from "../../../src-shared/units.ts";

const { route, timeline } = chartToScore(
  "Title: Lock Gate\nKey: G\n\n| G | G | C | N.C. | D | G |\n",
  newSongSettings.plan,
  null,
);
if (!route) throw new Error("the song has no route");
const BAR = 1920;
const at = (bar: number, placement: number, loop: readonly [number, number] | null = null) =>
  comingChange(route, {
    tick: bar * BAR,
    placement,
    loop: loop && { start: tick(loop[0] * BAR), end: tick(loop[1] * BAR) },
    length: timeline.length,
  });

describe("what comes next", () => {
  test("is the next chord, with the leg that leads there", () => {
    const change = at(1, 0);
    expect(change.next?.chord.name).toBe("C");
    expect(change.leg).toMatchObject({ from: 0, to: 1 });
    expect([change.since, change.due]).toEqual([0, 2 * BAR]);
  });

  test("in a silence is the chord after it, and counts from where the silence began", () => {
    const change = at(3, -1);
    expect(change.current).toBeNull();
    expect(change.next?.chord.name).toBe("D");
    expect(change.leg).toBeNull();
    expect([change.since, change.due]).toEqual([3 * BAR, 4 * BAR]);
  });

  test("at the end of a song that goes round is its first chord, by the seam", () => {
    const change = at(5, 3, [0, 6]);
    expect(change.next?.index).toBe(0);
    expect(change.leg?.seam).toBe(true);
    expect(change.loopsBack).toBe(true);
  });

  test("at the end of a song that is played once is nothing", () => {
    const change = at(5, 3);
    expect(change.next).toBeNull();
    expect(change.due).toBe(6 * BAR);
  });

  test("at the end of a loop is the loop's first chord, when the loop is over", () => {
    const change = at(2, 1, [1, 3]);
    expect(change.next?.chord.name).toBe("G");
    expect(change.loopsBack).toBe(true);
    expect(change.due).toBe(3 * BAR);
  });

  test("within a loop of one chord is nothing", () => {
    const change = at(0, 0, [0, 1]);
    expect(change.next).toBeNull();
    expect(change.loopsBack).toBe(true);
    expect(change.due).toBe(BAR);
  });

  test("after the loop is the song's next chord", () => {
    expect(at(4, 2, [0, 2]).next?.chord.name).toBe("G");
  });
});

test("a beat that has begun counts whole among those left", () => {
  expect(beatsLeft(0, 1920, 480)).toBe(4);
  expect(beatsLeft(481, 1920, 480)).toBe(3);
  expect(beatsLeft(1920, 1920, 480)).toBe(0);
  expect(beatsLeft(2400, 1920, 480)).toBe(0);
});
