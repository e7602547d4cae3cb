import { describe, expect, test } from "vitest";
import { countIn } from "../../../src-shared/score/countIn.ts";

describe("the count-in", () => {
  test("two bars of 3/4 are six clicks that lead up to the start, the first of each bar accented", () => {
    const hits = countIn({ beats: 3, unit: 4 }, 2);
    expect(hits.map((hit) => hit.tick)).toEqual([-2880, -2400, -1920, -1440, -960, -480]);
    expect(hits.map((hit) => hit.accent)).toEqual([true, false, false, true, false, false]);
  });

  test("a bar of 2/2 is counted in half notes", () => {
    expect(countIn({ beats: 2, unit: 2 }, 1).map((hit) => hit.tick)).toEqual([-1920, -960]);
  });

  test("two bars of 6/8 are counted in dotted quarters, two to a bar", () => {
    const hits = countIn({ beats: 6, unit: 8 }, 2);
    expect(hits.map((hit) => hit.tick)).toEqual([-2880, -2160, -1440, -720]);
    expect(hits.map((hit) => hit.accent)).toEqual([true, false, true, false]);
  });

  test("a bar of 9/8 is counted in three dotted quarters", () => {
    expect(countIn({ beats: 9, unit: 8 }, 1).map((hit) => hit.tick)).toEqual([-2160, -1440, -720]);
  });

  test("clicks have no pitch and end where the next begins", () => {
    for (const hit of countIn({ beats: 4, unit: 4 }, 1)) {
      expect(hit).toMatchObject({ part: "click", pitches: [], ticks: 480 });
    }
  });

  test("no bars give no clicks", () => {
    expect(countIn({ beats: 4, unit: 4 }, 0)).toEqual([]);
  });
});
