import fc from "fast-check";
import type { Chord } from "../../src-shared/harmony/chord.ts";
import type { DegreeChord } from "../../src-shared/harmony/degree.ts";
import type { Key } from "../../src-shared/harmony/key.ts";
import { makeChord } from "../../src-shared/harmony/makeChord.ts";
import { qualityTable } from "../../src-shared/harmony/qualityTable.ts";

/** Every root that a chart may write. */
export const allRoots: readonly string[] = [..."CDEFGAB"].flatMap((letter) => [
  letter,
  `${letter}b`,
  `${letter}#`,
]);

/** Roots as players call them: transposing and degrees give no others. */
export const plainRoots: readonly string[] = allRoots.filter(
  (root) => !["B#", "Cb", "E#", "Fb"].includes(root),
);

/** All major and minor keys of at most seven sharps or flats. */
export const allKeys: readonly Key[] = [
  ...["C", "G", "D", "A", "E", "B", "F#", "C#", "F", "Bb", "Eb", "Ab", "Db", "Gb", "Cb"].map(
    (tonic) => ({ tonic, mode: "major" }) as const,
  ),
  ...["A", "E", "B", "F#", "C#", "G#", "D#", "A#", "D", "G", "C", "F", "Bb", "Eb", "Ab"].map(
    (tonic) => ({ tonic, mode: "minor" }) as const,
  ),
];

/** Any quality that has voicings. */
export const anyQuality = fc.constantFrom(...qualityTable.map((row) => row.quality));

/** Any key a chart may name. */
export const anyKey: fc.Arbitrary<Key> = fc.constantFrom(...allKeys);

/** Any chord a chart may name by letter, slash chords among them. */
export const anyChord: fc.Arbitrary<Chord> = fc
  .tuple(
    fc.constantFrom(...plainRoots),
    anyQuality,
    fc.option(fc.constantFrom(...plainRoots), { freq: 4 }),
  )
  .map(([root, quality, bass]) => makeChord(root, quality, bass));

const anyDegree = fc.record({
  number: fc.integer({ min: 1, max: 7 }),
  accidental: fc.constantFrom("", "b", "#"),
});

/** Any chord called by degree. */
export const anyDegreeChord: fc.Arbitrary<DegreeChord> = fc
  .record({ degree: anyDegree, quality: anyQuality, bass: fc.option(anyDegree, { freq: 4 }) })
  .map((chord) =>
    chord.bass?.number === chord.degree.number && chord.bass.accidental === chord.degree.accidental
      ? { ...chord, bass: null }
      : chord,
  );
