import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";
import { meterName, writeChart } from "../../../src-shared/chart/writeChart.ts";
import { demoSongTable } from "../../../src-shared/demo/demoSongTable.ts";
import { keyName } from "../../../src-shared/harmony/readKey.ts";

const read = demoSongTable.map(({ id, text }) => ({ id, text, ...readChart(text) }));
const qualitiesOf = (text: string) =>
  unfold(readChart(text).value).stays.map((stay) => stay.chord?.quality ?? "N.C.");

describe("every demo song", () => {
  for (const { id, text, value, notes } of read) {
    test(`${id} reads without a word against it`, () => {
      expect(notes).toEqual([]);
    });

    test(`${id} is 16 to 40 bars long as played, and ends on its tonic`, () => {
      const { bars, stays } = unfold(value);
      expect(bars.length).toBeGreaterThanOrEqual(16);
      expect(bars.length).toBeLessThanOrEqual(40);
      expect(stays.at(-1)?.chord?.root).toBe(value.key.tonic);
    });

    test(`${id} comes back the same from its canonical chart`, () => {
      expect(readChart(writeChart(value)).value).toEqual(value);
    });

    test(`${id} has its title's words for an id, and a line on what it teaches`, () => {
      expect(id).toBe(value.title.toLowerCase().replaceAll(" ", "-"));
      const { teaches } = demoSongTable.find((song) => song.text === text) ?? { teaches: "" };
      expect(teaches).toMatch(/^[A-Z][^\n]{20,90}\.$/);
    });

    // Ranges: common practice, no published source.
    test(`${id} goes at a tempo of its kind`, () => {
      const [low, high] = {
        "4/4": [150, 220],
        "2/2": [80, 110],
        "3/4": [90, 120],
        "2/4": [80, 120],
        "6/8": [90, 125],
      }[meterName(value.meter) as "4/4"];
      expect(value.tempo).toBeGreaterThanOrEqual(low ?? 0);
      expect(value.tempo).toBeLessThanOrEqual(high ?? 0);
    });
  }
});

describe("the demo songs together", () => {
  test("have ids and titles of their own", () => {
    expect(new Set(read.map((song) => song.id)).size).toBe(read.length);
    expect(new Set(read.map((song) => song.value.title)).size).toBe(read.length);
  });

  test("cover the usual keys and meters", () => {
    expect(new Set(read.map((song) => keyName(song.value.key)))).toEqual(
      new Set(["G", "C", "D", "A", "Em", "Bb"]),
    );
    expect(new Set(read.map((song) => meterName(song.value.meter)))).toEqual(
      new Set(["4/4", "3/4", "2/2", "6/8"]),
    );
    expect(
      read.filter((song) => song.value.capo === 2).map((song) => song.value.key.tonic),
    ).toEqual(["A"]);
  });

  test("cover repeats, endings, a form, degrees and silence", () => {
    const bars = read.flatMap((song) => song.value.sections.flatMap((section) => section.bars));
    expect(bars.some((bar) => bar.plays === 2)).toBe(true);
    expect(bars.some((bar) => bar.ending?.[0] === 2)).toBe(true);
    expect(read.some((song) => song.value.form !== null)).toBe(true);
    expect(read.some((song) => song.symbols.every((symbol) => symbol.kind === "degree"))).toBe(
      true,
    );
    expect(bars.some((bar) => bar.stays.some((stay) => stay.chord === null))).toBe(true);
  });

  test("cover stays of a quarter, half a bar, a bar and two bars", () => {
    const lengths = new Set(
      read
        .filter((song) => song.value.meter.beats !== 3)
        .flatMap((song) => unfold(song.value).stays.map((stay) => stay.length)),
    );
    for (const length of [480, 960, 1920, 3840]) expect(lengths).toContain(length);
  });

  test("cover major, minor, seventh, minor seventh and diminished chords", () => {
    const all = new Set(demoSongTable.flatMap((song) => qualitiesOf(song.text)));
    for (const quality of ["", "m", "7", "m7", "dim7", "N.C."]) expect(all).toContain(quality);
  });
});
