import { parseMidi } from "midi-file";
import { expect, test } from "vitest";
import { songFile } from "../../../../src-renderer/screens/saving/songFile.ts";
import { songFileTable } from "../../../../src-renderer/screens/saving/songFileTable.ts";
import { chartToScore } from "../../../../src-shared/chartToScore.ts";
import { importFile } from "../../../../src-shared/exchange/importFile.ts";
import { wholeNeckPlan } from "../../../../src-shared/settings.ts";

const TEXT = "Title: Heron Weir\nKey: G\nTime: 3/4\nTempo: 101\n\n| G | C | D7 | G |\n";
const walk = chartToScore(TEXT, { ...wholeNeckPlan, playKey: "A" }, null);

test("each kind of file is offered once, under a name of its own", () => {
  expect(new Set(songFileTable.map(({ kind }) => kind)).size).toBe(songFileTable.length);
  expect(new Set(songFileTable.map(({ name }) => name)).size).toBe(songFileTable.length);
});

test.each(["musicxml", "notation"] as const)(
  "a song saved as %s is read back in the key it is played in",
  (kind) => {
    const xml = songFile(kind, walk, TEXT);
    const read = importFile(new TextEncoder().encode(String(xml)));
    const [tune] = read.ok ? read.tunes : [];
    expect(tune?.ok && tune.chart).toContain("| A | D | E7 | A |");
    expect(String(xml).includes("<staves>2</staves>")).toBe(kind === "notation");
  },
);

test("a song saved as MIDI is read by another program's parser as type 1 with several tracks", () => {
  const bytes = songFile("midi", walk, TEXT);
  const { header } = parseMidi(typeof bytes === "string" ? [] : bytes);
  expect(header.format).toBe(1);
  expect(header.numTracks).toBeGreaterThan(2);
});

test("chart text is saved to the letter, whatever key it is played in", () => {
  expect(songFile("chart", walk, TEXT)).toBe(TEXT);
});

test("text tablature names the song and its chords as played", () => {
  const text = String(songFile("tablature", walk, TEXT));
  expect(text).toContain("Heron Weir");
  expect(text).toContain("E7");
});
