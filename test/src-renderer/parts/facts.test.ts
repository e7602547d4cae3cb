import { expect, test } from "vitest";
import { beatNote, sayCapo, sayTravel, sayWhen } from "../../../src-renderer/parts/facts.ts";
import { words } from "../../../src-shared/wordTable.ts";

test.each([
  [0, "0 mm"],
  [74.6, "75 mm"],
  [99.4, "99 mm"],
  [99.6, "10 cm"],
  [1236, "124 cm"],
])("%f mm of travel are %s", (mm, said) => {
  expect(sayTravel(mm)).toBe(said);
});

test("a capo is said with the place of the fifth string, which starts at the fifth fret", () => {
  expect([0, 2, 4].map(sayCapo)).toEqual([
    "",
    "capo 2, 5th string at 7",
    "capo 4, 5th string at 9",
  ]);
});

test("a tempo counts half notes, quarters or dotted quarters", () => {
  expect(([2, 4, 8] as const).map(beatNote)).toEqual([
    "half notes",
    "quarter notes",
    "dotted quarters",
  ]);
});

test("one is one, and none and two are many", () => {
  expect([0, 1, 2].map((count) => words.count.bars(count))).toEqual(["0 bars", "1 bar", "2 bars"]);
});

const noon = new Date(2031, 4, 17, 12, 5).getTime();
const hours = (n: number) => n * 3_600_000;

test.each([
  [noon - hours(3), "Today 09:05"],
  [noon - hours(12), "Today 00:05"],
  [noon - hours(13), "Yesterday"],
  [noon - hours(36), "Yesterday"],
  [noon - hours(37), "15 May 2031"],
])("a change at %d is said as %s", (atMs, said) => {
  expect(sayWhen(atMs, noon)).toBe(said);
});
