import { expect, test } from "vitest";
import { barCells } from "../../../src-renderer/geometry/barCells.ts";
import { barsToMend } from "../../../src-renderer/geometry/barsToMend.ts";
import { chartToScore, type Walk } from "../../../src-shared/chartToScore.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";

const walkOf = (text: string): Walk => chartToScore(text, wholeNeckPlan, null);
const wrongIn = (text: string): readonly (readonly [number, string])[] => {
  const { reading, notes } = walkOf(text);
  return [...barsToMend(reading.bars, notes)];
};

test("a bar with a chord that is none is to be mended, its neighbours on the line are not", () => {
  const { reading, notes } = walkOf("Title: Ford\n| G | C | Xm | D |\n| G | D |");
  const [note] = notes;
  expect([...barsToMend(reading.bars, notes)]).toEqual([[2, note?.says]]);
});

test("two mistakes in one bar are said together, in the order of the text", () => {
  const text = "| G | Xm Qm | D |";
  const notes = walkOf(text).notes.map(({ says }) => says);
  expect(notes).toHaveLength(2);
  expect(wrongIn(text)).toEqual([[1, notes.join(" ")]]);
});

test("bars without outer bar lines are told apart too", () => {
  expect(wrongIn("G | Xm\nC | Qm").map(([bar]) => bar)).toEqual([1, 3]);
});

test("a mistake in the header marks no bar", () => {
  const text = "Key: ???\n| G | C |";
  expect(walkOf(text).notes.some(({ severity }) => severity === "error")).toBe(true);
  expect(wrongIn(text)).toEqual([]);
});

test("a hint marks no bar", () => {
  const { reading, notes } = walkOf("| G | Xm |");
  const hints = notes.map((note) => ({ ...note, severity: "hint" as const }));
  expect([...barsToMend(reading.bars, hints)]).toEqual([]);
});

test("a wrong bar that is repeated is marked each time it is played", () => {
  const { reading, notes, timeline } = walkOf("|: G | Xm :| D |");
  const cells = barCells(timeline, barsToMend(reading.bars, notes));
  expect(cells.map(({ mend }) => mend !== null)).toEqual([false, true, false, true, false]);
});
