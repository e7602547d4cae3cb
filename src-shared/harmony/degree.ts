import { Interval, Note } from "tonal";
import type { Chord, Quality } from "./chord.ts";
import type { Key } from "./key.ts";
import { makeChord } from "./makeChord.ts";
import { plainNote } from "./noteName.ts";

/** A degree of the major scale on a key's tonic, in minor keys too. */
export type Degree = {
  /** 1 to 7. */
  readonly number: number;
  readonly accidental: "b" | "#" | "";
};

/** A chord called by degree: the same in every key. */
export type DegreeChord = {
  readonly degree: Degree;
  readonly quality: Quality;
  /** null where the bass is the root. */
  readonly bass: Degree | null;
};

/** Intervals of the major scale, degree 1 first. */
const majorScale = ["1P", "2M", "3M", "4P", "5P", "6M", "7M"];
const chromaticSteps = { b: "-1A", "": "1P", "#": "1A" } as const;

/**
 * The note on a degree, spelled plainly: never B#, E#, Cb, Fb or a double accidental.
 * @example noteOnDegree({ number: 7, accidental: "b" }, { tonic: "G", mode: "major" }) // => "F"
 */
export const noteOnDegree = (degree: Degree, key: Key): string => {
  const interval = majorScale[degree.number - 1];
  if (interval === undefined) throw new RangeError(`degree ${degree.number} is not 1 to 7`);
  const natural = Note.transpose(key.tonic, interval);
  return plainNote(Note.transpose(natural, chromaticSteps[degree.accidental]));
};

const sameDegree = (one: Degree, other: Degree): boolean =>
  one.number === other.number && one.accidental === other.accidental;

const degreeText = (degree: Degree): string => `${degree.accidental}${degree.number}`;

/**
 * A degree chord as a chart writes it: a hyphen only before a quality that starts with a figure.
 * @example degreeSymbol({ degree: { number: 5, accidental: "" }, quality: "7", bass: null }) // => "5-7"
 */
export const degreeSymbol = (chord: DegreeChord): string => {
  const joint = /^\d/.test(chord.quality) ? "-" : "";
  const bass =
    chord.bass === null || sameDegree(chord.bass, chord.degree) ? "" : `/${degreeText(chord.bass)}`;
  return `${degreeText(chord.degree)}${joint}${chord.quality}${bass}`;
};

/**
 * A degree chord as it sounds in a key. A bare number is a major chord, in minor keys too.
 * @example chordOnDegree({ degree: { number: 4, accidental: "" }, quality: "", bass: null }, { tonic: "Bb", mode: "major" }).name // => "Eb"
 */
export const chordOnDegree = (chord: DegreeChord, key: Key): Chord =>
  makeChord(
    noteOnDegree(chord.degree, key),
    chord.quality,
    chord.bass === null ? null : noteOnDegree(chord.bass, key),
  );

/** Degree names by semitones above the tonic; the black ones as the trade calls them. */
const bySemitones: readonly Degree[] = [
  { number: 1, accidental: "" },
  { number: 2, accidental: "b" },
  { number: 2, accidental: "" },
  { number: 3, accidental: "b" },
  { number: 3, accidental: "" },
  { number: 4, accidental: "" },
  { number: 4, accidental: "#" },
  { number: 5, accidental: "" },
  { number: 6, accidental: "b" },
  { number: 6, accidental: "" },
  { number: 7, accidental: "b" },
  { number: 7, accidental: "" },
];

const degreeOfNote = (note: string, key: Key): Degree => {
  const semitones = Interval.semitones(Note.distance(key.tonic, note));
  const found = bySemitones[((semitones % 12) + 12) % 12];
  if (found === undefined) throw new RangeError(`no degree for ${note} in ${key.tonic}`);
  return found;
};

/**
 * What a chord is called by degree in a key.
 * @example degreeChordOf({ name: "D7", root: "D", quality: "7", tones: [], bass: null, standsFor: null }, { tonic: "G", mode: "major" }) // => { degree: { number: 5, accidental: "" }, quality: "7", bass: null }
 */
export const degreeChordOf = (chord: Chord, key: Key): DegreeChord => ({
  degree: degreeOfNote(chord.root, key),
  quality: chord.quality,
  bass: chord.bass === null ? null : degreeOfNote(chord.bass, key),
});
