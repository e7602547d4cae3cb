import fc from "fast-check";
import { type ChordSymbol, silence } from "../../src-shared/chart/chordSymbol.ts";
import { eighthsIn } from "../../src-shared/chart/pulse.ts";
import type { Bar, Meter, Section, Song, Stay } from "../../src-shared/chart/song.ts";
import { chordOnDegree, degreeSymbol } from "../../src-shared/harmony/degree.ts";
import type { Key } from "../../src-shared/harmony/key.ts";
import { tunings } from "../../src-shared/neck/tuningTable.ts";
import { bpm, fret } from "../../src-shared/units.ts";
import { anyChord, anyDegreeChord, anyKey } from "./anyChord.ts";

/** A symbol by letter, by degree, or none, as it sounds in a key. */
const anySymbol = (key: Key): fc.Arbitrary<Pick<ChordSymbol, "symbol" | "chord">> =>
  fc.oneof(
    { weight: 5, arbitrary: anyChord.map((chord) => ({ symbol: chord.name, chord })) },
    {
      weight: 3,
      arbitrary: anyDegreeChord.map((degree) => ({
        symbol: degreeSymbol(degree),
        chord: chordOnDegree(degree, key),
      })),
    },
    { weight: 1, arbitrary: fc.constant({ symbol: silence.symbol, chord: null }) },
  );

/** Whole eighths that add up to `full`. */
const anyShares = (full: number): fc.Arbitrary<readonly number[]> =>
  fc.subarray(Array.from({ length: full - 1 }, (_, at) => at + 1)).map((cuts) => {
    const edges = [0, ...cuts, full];
    return edges.slice(1).map((edge, at) => edge - (edges[at] ?? 0));
  });

const plain: Omit<Bar, "stays"> = {
  opensRepeat: false,
  plays: 1,
  ending: null,
  endsEnding: false,
};

const anyBar = (key: Key, meter: Meter): fc.Arbitrary<Bar> =>
  anyShares(eighthsIn(meter)).chain((shares) =>
    fc
      .array(anySymbol(key), { minLength: shares.length, maxLength: shares.length })
      .map((symbols) => ({
        ...plain,
        stays: symbols.map((each, at): Stay => ({ ...each, eighths: shares[at] ?? 0 })),
      })),
  );

const bars = (key: Key, meter: Meter): fc.Arbitrary<readonly Bar[]> =>
  fc.array(anyBar(key, meter), { minLength: 1, maxLength: 4 });

const closing = (passage: readonly Bar[], plays: number): readonly Bar[] =>
  passage.map((bar, at) => ({
    ...bar,
    opensRepeat: at === 0,
    plays: at === passage.length - 1 ? plays : 1,
  }));

const withEndings = (
  stem: readonly Bar[],
  endings: readonly (readonly Bar[])[],
): readonly Bar[] => [
  ...stem.map((bar, at) => ({ ...bar, opensRepeat: at === 0 })),
  ...endings.flatMap((ending, number) =>
    ending.map((bar, at) => {
      const isLast = at === ending.length - 1;
      const goesBack = isLast && number < endings.length - 1;
      return {
        ...bar,
        ending: at === 0 ? [number + 1] : null,
        plays: goesBack ? 2 : 1,
        endsEnding: isLast && !goesBack,
      };
    }),
  ),
];

/** Bars with their repeats as a reader settles them: plain, repeated, or with endings. */
const anyPassage = (key: Key, meter: Meter): fc.Arbitrary<readonly Bar[]> =>
  fc.oneof(
    bars(key, meter),
    fc
      .tuple(bars(key, meter), fc.integer({ min: 2, max: 4 }))
      .map(([passage, plays]) => closing(passage, plays)),
    fc
      .tuple(bars(key, meter), fc.array(bars(key, meter), { minLength: 2, maxLength: 3 }))
      .map(([stem, endings]) => withEndings(stem, endings)),
  );

const anyMeter: fc.Arbitrary<Meter> = fc.constantFrom<Meter>(
  { beats: 4, unit: 4 },
  { beats: 3, unit: 4 },
  { beats: 2, unit: 4 },
  { beats: 2, unit: 2 },
  { beats: 6, unit: 8 },
  { beats: 9, unit: 8 },
);

const labels = ["A", "B", "Verse", "Chorus-2", "Bridge"];

const anySections = (key: Key, meter: Meter): fc.Arbitrary<readonly Section[]> =>
  fc
    .tuple(
      fc.boolean(),
      fc.array(fc.array(anyPassage(key, meter), { minLength: 1, maxLength: 3 }), { maxLength: 4 }),
    )
    .map(([startsBare, all]) =>
      all.map((passages, at) => ({
        label: startsBare && at === 0 ? null : (labels[at] ?? "Tag"),
        bars: passages.flat(),
      })),
    );

const anyForm = (sections: readonly Section[]): fc.Arbitrary<readonly string[] | null> => {
  const names = sections.flatMap((section) => (section.label === null ? [] : [section.label]));
  return names.length === 0
    ? fc.constant(null)
    : fc.option(fc.array(fc.constantFrom(...names), { minLength: 1, maxLength: 6 }));
};

/** Any song as a reader gives it. */
export const anySong: fc.Arbitrary<Song> = fc
  .tuple(anyKey, anyMeter)
  .chain(([key, meter]) => anySections(key, meter).map((sections) => ({ key, meter, sections })))
  .chain((part) => anyForm(part.sections).map((form) => ({ ...part, form })))
  .chain((part) =>
    fc
      .record({
        title: fc.constantFrom("Untitled", "Tin Lamp No. 7", "Down #2 Lane", "Keys to: nothing"),
        tempo: fc.integer({ min: 20, max: 320 }).map(bpm),
        capo: fc.integer({ min: 0, max: 11 }).map(fret),
        tuning: fc.constantFrom(...tunings.map((tuning) => tuning.name)),
      })
      .map((rest) => ({ ...rest, ...part })),
  );

const scraps = [
  ..."|:[].,'%#/-() \n\t123457ABCDEFGHbm°ø…’♭",
  "|:",
  ":|",
  "::",
  "||",
  "|]",
  "[|",
  "[1",
  "|1 ",
  ":|2 ",
  "[1,3",
  "[1-99999",
  "::::|",
  "[A] ",
  "[Verse]\n",
  "[No good",
  "G",
  "D7",
  "Em7/B",
  "C9",
  "5-7",
  "57",
  "b7",
  "N.C.",
  "constructor",
  "__proto__",
  "Title: ",
  "Key: Bb ",
  "Time: 3/4 ",
  "Time: 2/2\n",
  "Time: 6/8 ",
  "Time: 9/8 ",
  "Tempo: 1/4=90\n",
  "Tempo: 3/8=96\n",
  "Capo: 3 ",
  "Tuning: double C\n",
  "Form: A A Verse\n",
  "Form: ",
  "Nonsense: ",
  "# a remark\n",
  "\r\n",
];

/** Any text at all, much of it nearly a chart. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 200 }) },
  {
    weight: 6,
    arbitrary: fc.array(fc.constantFrom(...scraps), { maxLength: 120 }).map((all) => all.join("")),
  },
);
