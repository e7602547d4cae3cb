import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { replaceBar, setHeader, transposeChart } from "../../src-shared/chart/edits.ts";
import { fieldNames } from "../../src-shared/chart/fields.ts";
import { inKey } from "../../src-shared/chart/inKey.ts";
import { MAX_BARS, playOrder } from "../../src-shared/chart/playOrder.ts";
import { eighthsIn } from "../../src-shared/chart/pulse.ts";
import { readChart } from "../../src-shared/chart/readChart.ts";
import type { Song } from "../../src-shared/chart/song.ts";
import { unfold } from "../../src-shared/chart/unfold.ts";
import { writeChart, writeStays } from "../../src-shared/chart/writeChart.ts";
import { hasErrors } from "../../src-shared/diagnostic.ts";
import { keyOn } from "../../src-shared/harmony/readKey.ts";
import { anySong, anyText } from "./anyChart.ts";
import { anyKey } from "./anyChord.ts";

const lines = (text: string) => text.split(/\r\n|\n|\r/);
const barsOf = (song: Song) => song.sections.flatMap((section) => section.bars);
const pitchClasses = (song: Song) =>
  barsOf(song).flatMap((bar) =>
    bar.stays.map((stay) => stay.chord?.tones.map((tone) => tone.pitchClass) ?? []),
  );

describe("every text", () => {
  test("reads as a song whose stays fill every bar", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const song = readChart(text).value;
        for (const bar of barsOf(song)) {
          expect(bar.stays.reduce((sum, stay) => sum + stay.eighths, 0)).toBe(
            eighthsIn(song.meter),
          );
          expect(bar.stays.every((stay) => stay.eighths >= 1)).toBe(true);
        }
        expect(song.sections.every((section) => section.bars.length > 0)).toBe(true);
      }),
      { numRuns: 1500 },
    );
  });

  test("is noted only at places inside it, in the order of the text, with a way out", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const all = lines(text);
        let before = 0;
        for (const { at, says, try: advice } of readChart(text).notes) {
          const line = all[at.line - 1];
          expect(line).toBeDefined();
          expect(at.column).toBeGreaterThanOrEqual(1);
          expect(at.length).toBeGreaterThanOrEqual(1);
          expect(at.column - 1 + at.length).toBeLessThanOrEqual(line?.length ?? 0);
          const place = at.line * 1_000_000 + at.column;
          expect(place).toBeGreaterThanOrEqual(before);
          before = place;
          expect(says).toMatch(/^\S.*[.]$/s);
          expect(advice).toMatch(/^\S/);
        }
      }),
      { numRuns: 1500 },
    );
  });

  test("has its bars and symbols where the reading says", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { value, bars, symbols } = readChart(text);
        expect(bars.length).toBe(barsOf(value).length);
        let end = 0;
        for (const bar of bars) {
          expect(bar.start).toBeGreaterThanOrEqual(end);
          expect(bar.end).toBeGreaterThan(bar.start);
          expect(text.slice(bar.start, bar.end)).not.toMatch(/[|\n\r]|^\s|\s$/);
          const lead = lines(text).slice(0, bar.line - 1);
          expect(lines(text.slice(0, bar.start))).toEqual([
            ...lead,
            (lines(text)[bar.line - 1] ?? "").slice(0, bar.column - 1),
          ]);
          end = bar.end;
        }
        for (const { offset, length, bar } of symbols) {
          expect(offset).toBeGreaterThanOrEqual(bars[bar]?.start ?? text.length);
          expect(offset + length).toBeLessThanOrEqual(bars[bar]?.end ?? 0);
        }
      }),
      { numRuns: 800 },
    );
  });

  test("comes back the same from its canonical chart", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const song = readChart(text).value;
        expect(readChart(writeChart(song)).value).toEqual(song);
      }),
      { numRuns: 1500 },
    );
  });

  test("takes every header and keeps its bars", () => {
    const value = fc.constantFrom("G", "Bb", "3/4", "6/8", "2", "A A", "", "x # y", "Key: D");
    fc.assert(
      fc.property(anyText, fc.constantFrom(...fieldNames), value, (text, name, put) => {
        const before = readChart(text);
        const after = readChart(setHeader(text, name, put));
        expect(after.bars.length).toBe(before.bars.length);
      }),
      { numRuns: 800 },
    );
  });

  test("takes a new bar in place of any of its own", () => {
    fc.assert(
      fc.property(anyText, fc.nat(), (text, choice) => {
        const before = readChart(text);
        fc.pre(before.bars.length > 0 && before.notes.every((note) => note.code !== "stray-mark"));
        const written = choice % before.bars.length;
        const after = readChart(replaceBar(text, written, "Em"));
        expect(after.bars.length).toBe(before.bars.length);
        expect(barsOf(after.value)[written]?.stays.map((stay) => stay.symbol)).toEqual(["Em"]);
      }),
      { numRuns: 800 },
    );
  });
});

describe("every song", () => {
  test("comes back the same, and without errors, from its written chart", () => {
    fc.assert(
      fc.property(anySong, (song) => {
        const reading = readChart(writeChart(song));
        expect(reading.notes.filter((note) => note.severity === "error")).toEqual([]);
        expect(reading.value).toEqual(song);
      }),
      { numRuns: 400 },
    );
  });

  test("is written the same again when its chart is read", () => {
    fc.assert(
      fc.property(anySong, (song) => {
        const text = writeChart(song);
        expect(writeChart(readChart(text).value)).toBe(text);
      }),
      { numRuns: 200 },
    );
  });

  test("unfolds to bars end to end, and to stays end to end over just these bars", () => {
    fc.assert(
      fc.property(anySong, (song) => {
        const timeline = unfold(song);
        const length = eighthsIn(song.meter) * 240;
        expect(timeline.bars.map((bar) => bar.start)).toEqual(
          timeline.bars.map((_, at) => at * length),
        );
        expect(timeline.length).toBe(timeline.bars.length * length);
        expect(timeline.bars.map((bar) => bar.written)).toEqual(
          playOrder(song).bars.map((bar) => bar.written),
        );
        let at = 0;
        for (const [index, stay] of timeline.stays.entries()) {
          expect(stay.start).toBe(at);
          expect(stay.length).toBeGreaterThan(0);
          expect(stay.bar).toBe(Math.floor(stay.start / length));
          const next = timeline.stays[index + 1];
          if (next !== undefined) expect(next.chord?.name).not.toBe(stay.chord?.name);
          at += stay.length;
        }
        expect(at).toBe(timeline.length);
      }),
      { numRuns: 300 },
    );
  });

  test("sounds in each tick of its timeline what the written bar has there", () => {
    fc.assert(
      fc.property(anySong, (song) => {
        const timeline = unfold(song);
        const written = barsOf(song);
        const eighths = timeline.bars.flatMap((bar) =>
          (written[bar.written]?.stays ?? []).flatMap((stay) =>
            Array.from({ length: stay.eighths }, () => stay.chord?.name ?? null),
          ),
        );
        const sounding = timeline.stays.flatMap((stay) =>
          Array.from({ length: stay.length / 240 }, () => stay.chord?.name ?? null),
        );
        expect(sounding).toEqual(eighths);
      }),
      { numRuns: 300 },
    );
  });

  test("moves to another key and back with the same pitches, its degrees untouched", () => {
    fc.assert(
      fc.property(anySong, anyKey, (song, key) => {
        const moved = inKey(song, key);
        expect(moved.key).toEqual(keyOn(key.tonic, song.key.mode));
        const degrees = (of: Song) =>
          barsOf(of).flatMap((bar) =>
            bar.stays.map((stay) => stay.symbol).filter((symbol) => /^[b#]?\d/.test(symbol)),
          );
        expect(degrees(moved)).toEqual(degrees(song));
        expect(pitchClasses(inKey(moved, song.key))).toEqual(pitchClasses(song));
      }),
      { numRuns: 200 },
    );
  });

  test("sounds the same moved as a song and moved as a text", () => {
    fc.assert(
      fc.property(anySong, anyKey, (song, key) => {
        const moved = readChart(transposeChart(writeChart(song), key));
        expect(hasErrors(moved.notes)).toBe(false);
        expect(pitchClasses(moved.value)).toEqual(pitchClasses(inKey(song, key)));
        expect(moved.value.key).toEqual(inKey(song, key).key);
      }),
      { numRuns: 200 },
    );
  });

  test("writes each bar's content so that it reads back by itself", () => {
    fc.assert(
      fc.property(anySong, (song) => {
        const header = writeChart({ ...song, sections: [], form: null });
        for (const bar of barsOf(song)) {
          const [read] = barsOf(
            readChart(`${header}\n| ${writeStays(bar.stays, song.meter)} |`).value,
          );
          expect(read?.stays).toEqual(bar.stays);
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe("a text of a million characters", () => {
  const million = (part: string) => part.repeat(Math.ceil(1_000_000 / part.length));
  const texts = [
    "|:",
    ":|",
    ":",
    "|",
    "[",
    "[a",
    "[A]G",
    "G ",
    "G|",
    "G\n",
    ". ",
    "x ",
    "G",
    "1",
    "[1 G ",
    "|: G [1 D :|",
    "Key: ",
    "a: ",
    "#",
    " ",
    "%|",
    "57 ",
    "Title: x\n",
    "( ",
    "/",
  ];
  for (const part of texts) {
    test(`made of ${JSON.stringify(part)} is read and unfolded`, () => {
      const { value, notes } = readChart(million(part));
      const timeline = unfold(value);
      expect(timeline.bars.length).toBeLessThanOrEqual(MAX_BARS);
      expect(notes.length).toBeLessThanOrEqual(200);
      expect(notes.every((note) => note.says.length + note.try.length < 600)).toBe(true);
    }, 20_000);
  }

  test("whose form names its sections over and over is cut and says so", () => {
    const form = million("A B ");
    const { value, notes } = readChart(`Form: ${form}\n[A] |: G ::::::::::::::|\n[B] C | D`);
    expect(unfold(value).bars.length).toBe(MAX_BARS);
    expect(notes.map((note) => note.code)).toEqual(["too-long"]);
  }, 20_000);

  test("with twenty thousand labels in form and bars is read", () => {
    const labels = Array.from({ length: 20_000 }, (_, at) => `S${at}`);
    const text = `Form: ${labels.join(" ")}\n${labels.map((label) => `[${label}]G`).join("\n")}`;
    expect(readChart(text).value.sections.length).toBe(20_000);
  }, 20_000);
});
