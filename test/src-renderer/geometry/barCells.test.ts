import { describe, expect, test } from "vitest";
import { barCells, barRange } from "../../../src-renderer/geometry/barCells.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";

const cells = barCells(
  chartToScore(
    "Title: Ford\nKey: G\n\n[Verse]\n| G | G | C D | N.C. |\n[Chorus]\n| Em | D |\n",
    wholeNeckPlan,
    null,
  ).timeline,
  new Map(),
);

describe("the strip of bars", () => {
  test("names every chord of a bar, and silence", () => {
    expect(cells.map((cell) => cell.names.join(" "))).toEqual(["G", "G", "C D", "N.C.", "Em", "D"]);
  });

  test("tells a chord that goes on from one that is new", () => {
    expect(cells.map((cell) => cell.fresh)).toEqual([true, false, true, true, true, true]);
  });

  test("labels a section where it starts", () => {
    expect(cells.map((cell) => cell.section)).toEqual(["Verse", null, null, null, "Chorus", null]);
  });

  test("numbers a section from the second time it is played", () => {
    const { timeline } = chartToScore(
      "Title: Ford\nKey: G\nForm: Verse Chorus Verse Chorus\n\n[Verse]\n| G |\n[Chorus]\n| Em |\n",
      wholeNeckPlan,
      null,
    );
    const sections = barCells(timeline, new Map()).map((cell) => cell.section);
    expect(sections).toEqual(["Verse", "Chorus", "Verse 2", "Chorus 2"]);
  });

  test("takes a drag to the left for the same bars as one to the right", () => {
    expect(barRange(7, 3)).toEqual(barRange(3, 7));
  });
});
