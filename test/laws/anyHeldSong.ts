import fc from "fast-check";
import { Note, Chord as TonalChord } from "tonal";
import type { Timeline } from "../../src-shared/chart/song.ts";
import type { Chord, ChordTone, Quality } from "../../src-shared/harmony/chord.ts";
import { tick } from "../../src-shared/units.ts";

const roleOfDegree: Readonly<Record<number, ChordTone["role"]>> = {
  1: "root",
  2: "third",
  3: "third",
  4: "third",
  5: "fifth",
  6: "seventh",
  7: "seventh",
};

/** A chord whose tones come straight from tonal, past our own reader and tables. */
export const chordByTonal = (root: string, quality: Quality): Chord => {
  const found = TonalChord.get(`${root}${quality === "" ? "M" : quality}`);
  const rootClass = Note.chroma(root);
  const tones = found.intervals.map((interval, index): ChordTone => {
    const note = found.notes[index] ?? "";
    const pitchClass = Note.chroma(note);
    const degree = Number.parseInt(interval, 10);
    const role = roleOfDegree[degree];
    if (!role) {
      throw new Error(`${root}${quality}: no role for ${interval}`);
    }
    return { role, pitchClass, semitones: (pitchClass - rootClass + 12) % 12 };
  });
  return { name: root + quality, root, quality, tones, bass: null, standsFor: null };
};

/** Every quality that has voicings. */
export const qualities: readonly Quality[] = [
  "",
  "m",
  "7",
  "m7",
  "maj7",
  "6",
  "dim",
  "aug",
  "sus2",
  "sus4",
  "m7b5",
  "dim7",
];

export const roots = ["C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"] as const;

export const anyTonalChord: fc.Arbitrary<Chord> = fc
  .tuple(fc.constantFrom(...roots), fc.constantFrom(...qualities))
  .map(([root, quality]) => chordByTonal(root, quality));

/** A song of one bar of 4/4 for each chord; null is N.C. */
export const timelineOf = (chords: readonly (Chord | null)[]): Timeline => ({
  meter: { beats: 4, unit: 4 },
  length: tick(chords.length * 1920),
  bars: chords.map((_, index) => ({
    index,
    start: tick(index * 1920),
    length: tick(1920),
    section: null,
    startsSection: index === 0,
    written: index,
  })),
  stays: chords.map((chord, index) => ({
    chord,
    start: tick(index * 1920),
    length: tick(1920),
    bar: index,
  })),
});
