import { expect, test } from "vitest";
import { announced } from "../../../../src-renderer/screens/play/announced.ts";
import { standNow } from "../../../../src-renderer/screens/play/standNow.ts";
import { chartToScore } from "../../../../src-shared/chartToScore.ts";
import { newSongSettings } from "../../../../src-shared/settings.ts";

const walk = chartToScore(
  "Title: Towpath\nKey: G\n| G | G | C | C |\n",
  { ...newSongSettings.plan, shapes: ["D"], fretHigh: 16, goesRound: false },
  null,
);
const saysAt = (bar: number, beat: number, placement: number): string =>
  announced(walk, standNow(walk, { state: "playing", bar, beat, placement }, null, 0));

test("the next change is announced from a bar before it is due, in one sentence", () => {
  expect(saysAt(0, 3, 0)).toBe("");
  // D shape: G root at fret 8, C at 13 (common practice, no published source).
  expect(saysAt(1, 0, 0)).toBe("Next C: Up 5 to the D shape.");
  expect(saysAt(1, 3, 0)).toBe("Next C: Up 5 to the D shape.");
});

test("nothing is announced in the count-in, and where nothing comes", () => {
  const counting = { state: "countingIn", bar: 1, beat: 0, placement: 0 } as const;
  expect(announced(walk, standNow(walk, counting, null, 0))).toBe("");
  expect(saysAt(3, 2, 1)).toBe("");
});
