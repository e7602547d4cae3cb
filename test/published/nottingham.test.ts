import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Note, Chord as TonalChord } from "tonal";
import { describe, expect, test } from "vitest";
import { chartToScore } from "../../src-shared/chartToScore.ts";
import { hasErrors } from "../../src-shared/diagnostic.ts";
import { wholeNeckPlan } from "../../src-shared/settings.ts";

/*
 * Changes of three tunes of the Nottingham folk tune collection (Eric Foxley's Nottingham Music
 * Database, as cleaned in github.com/jukedeck/nottingham-dataset), typed by hand in our own chart
 * language; pick-up notes left out. File and tune number name the source. Bars as played were
 * counted by hand from the file.
 */
const tunes = [
  {
    file: "reelsa-c.abc",
    number: 1,
    bars: 16,
    chart: `Key: D  Time: 4/4  Tempo: 180  Form: A B
[A]
|: D G | Em A | G A7 | D A7 :|
[B]
| D | G Em | A7 | A7 | D D7 | G A | G A7 | D |`,
  },
  {
    file: "reelsa-c.abc",
    number: 2,
    bars: 32,
    chart: `Key: G  Time: 4/4  Tempo: 200
| G D7 | G | G | G | C | G | Am | D7 |
| G D7 | G | G | G . . G7 | C | G D7 | G D7 | G ||
| D | D | Am | D7 | G | D7 | G | G . . G7 |
| C | D7 | Am | D7 | C | C | G D7 | G |`,
  },
  {
    file: "waltzes.abc",
    number: 2,
    bars: 32,
    chart: `Key: G  Time: 3/4  Tempo: 120
|: G | G | C | C | G | C |[1 Em . Am | D7 :|[2 Em . D7 | G ||
| G | Em | G | C D7 . | G | G | Em | Am . D7 |
| G | Em | Em | G | G | C | D7 | G |`,
  },
] as const;

const folder = resolve("../shared/nottingham");

/** The chord symbols of one tune in the order the file writes them, each as letters and plain suffix. */
const symbolsInFile = (file: string, number: number): readonly string[] => {
  const text = readFileSync(resolve(folder, file), "utf8");
  const tune = text.split(/^X:\s*/m).find((part) => Number.parseInt(part, 10) === number) ?? "";
  return [...tune.matchAll(/"([A-G][^"]*)"/g)].map((match) => match[1] ?? "");
};

const withoutRepeats = (names: readonly string[]) =>
  names.filter((name, index) => name !== names[index - 1]);

describe("three tunes of the Nottingham collection", () => {
  for (const { file, number, bars, chart } of tunes) {
    const walk = chartToScore(chart, wholeNeckPlan, null);

    test(`${file} ${number} is read without a note, routed and scored over all its bars`, () => {
      expect(walk.notes).toEqual([]);
      expect(hasErrors(walk.notes)).toBe(false);
      expect(walk.timeline.bars.length).toBe(bars);
      expect(walk.route?.placements.length).toBe(walk.timeline.stays.length);
      const played = new Set(walk.score.notes.map((note) => note.tick));
      expect(played.size * 240).toBe(walk.timeline.length);
    });

    test(`${file} ${number} sounds only tones that tonal finds in each chord`, () => {
      for (const placement of walk.route?.placements ?? []) {
        const { name } = placement.chord;
        const tones = new Set(TonalChord.get(name).notes.map((note) => Note.chroma(note)));
        const own = walk.score.notes.filter((note) => note.placement === placement.index);
        expect(
          own.filter((note) => !tones.has(note.midi % 12)),
          name,
        ).toEqual([]);
      }
    });

    test.runIf(existsSync(folder))(
      `${file} ${number} has the chords that the collection's file writes`,
      () => {
        const typed = walk.reading.value.sections
          .flatMap((section) => section.bars.flatMap((bar) => bar.stays))
          .map((stay) => stay.symbol);
        expect(withoutRepeats(typed)).toEqual(withoutRepeats(symbolsInFile(file, number)));
      },
    );
  }
});
