import { expect, test } from "vitest";
import { chartHelpTable } from "../../../../src-renderer/screens/chart/chartHelpTable.ts";
import { titleRange } from "../../../../src-renderer/screens/chart/titleRange.ts";
import {
  STARTER_TITLE,
  starterText,
} from "../../../../src-renderer/screens/songbook/starterText.ts";
import { readChart } from "../../../../src-shared/chart/readChart.ts";
import type { Song } from "../../../../src-shared/chart/song.ts";

/** What a song's bars say, written bar by written bar: "G3/4" is G for three eighths of four. */
const barsOf = (song: Song) =>
  song.sections.flatMap(({ bars }) =>
    bars.map(({ stays }) => stays.map(({ symbol, eighths }) => `${symbol}:${eighths}`).join(" ")),
  );

const textOf = (title: string) =>
  chartHelpTable.find((item) => item.title === title)?.text ?? `no help on ${title}`;

test.each(chartHelpTable)("the help on $title reads without a note", ({ text }) => {
  expect(readChart(text).notes).toEqual([]);
});

test("no two helps have the same title", () => {
  expect(new Set(chartHelpTable.map(({ title }) => title)).size).toBe(chartHelpTable.length);
});

// What each help says in words, held against what the reader makes of its text.
test.each([
  ["Bars", ["G:8", "C:8", "Em:4 D7:4", "G:8"]],
  ["Beats", ["G:6 C:2", "D:4 G:4"]],
  ["Half beats", ["G:5 C:1 D:2"]],
  ["Six-eight time", ["G:3 C:3", "G:5 D:1"]],
  ["The same again", ["G:6 D:2", "G:6 D:2", "C:8", "C:8"]],
  ["Silence", ["G:8", "N.C.:8", "D:4 N.C.:4"]],
  ["Remarks", ["G:8", "C:8"]],
])("the help on %s means what it says", (title, expected) => {
  expect(barsOf(readChart(textOf(title)).value)).toEqual(expected);
});

test("the help on repeats plays the second passage three times", () => {
  const [section] = readChart(textOf("Repeats")).value.sections;
  expect(section?.bars.map(({ plays }) => plays)).toEqual([1, 2, 1, 3]);
});

test("the help on numbers names the chords of A", () => {
  const [section] = readChart(textOf("Numbers")).value.sections;
  const names = section?.bars.flatMap(({ stays }) => stays.map(({ chord }) => chord?.name));
  expect(names).toEqual(["A", "D", "F#m", "G", "E7"]);
});

test("a new song's chart reads without a note, and its title is the part that is selected", () => {
  const reading = readChart(starterText);
  expect(reading.notes).toEqual([]);
  expect(reading.value.title).toBe(STARTER_TITLE);
  const range = titleRange(starterText);
  expect(starterText.slice(range?.from, range?.to)).toBe(STARTER_TITLE);
});

test("a chart without a title has no title to select", () => {
  expect(titleRange("Key: G\n| G |")).toBe(null);
});
