import { Note } from "tonal";
import type { Chord } from "./chord.ts";
import type { Key } from "./key.ts";
import { makeChord } from "./makeChord.ts";
import { pitchClassOf, plainNote } from "./noteName.ts";

/**
 * A note moved as far as one key's tonic lies from another's, spelled for the new key, without
 * double accidentals.
 * @example transposeNote("E", { tonic: "C", mode: "major" }, { tonic: "Bb", mode: "major" }) // => "D"
 */
export const transposeNote = (note: string, from: Key, to: Key): string =>
  // Interval names keep the letter's distance, so that a third stays a third in spelling.
  plainNote(Note.transpose(note, Note.distance(from.tonic, to.tonic)));

/**
 * A chord moved from one key to another: the same degree, the same quality.
 * @example transposeChord({ name: "D7", root: "D", quality: "7", tones: [], bass: null, standsFor: null }, { tonic: "G", mode: "major" }, { tonic: "A", mode: "major" }).name // => "E7"
 */
export const transposeChord = (chord: Chord, from: Key, to: Key): Chord => {
  const root = transposeNote(chord.root, from, to);
  const bass = chord.bass === null ? null : transposeNote(chord.bass, from, to);
  const moved = makeChord(root, chord.quality, bass);
  if (chord.standsFor?.startsWith(chord.root) !== true)
    return { ...moved, standsFor: chord.standsFor };
  const suffix = chord.standsFor.slice(chord.root.length).replace(/\/[A-G][b#]?$/, "");
  return { ...moved, standsFor: `${root}${suffix}${bass === null ? "" : `/${bass}`}` };
};

/**
 * How many semitones up one key's tonic lies from another's, 0 to 11.
 * @example semitonesBetween({ tonic: "G", mode: "major" }, { tonic: "A", mode: "major" }) // => 2
 */
export const semitonesBetween = (from: Key, to: Key): number =>
  (pitchClassOf(to.tonic) - pitchClassOf(from.tonic) + 12) % 12;
