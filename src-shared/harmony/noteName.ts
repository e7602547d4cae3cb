import { Note, Key as TonalKey } from "tonal";
import type { Key } from "./key.ts";

/**
 * Pitch class of a note name, 0 (C) to 11 (B). A text that is no note name is a bug and throws.
 * @example pitchClassOf("Bb") // => 10
 */
export const pitchClassOf = (note: string): number => {
  const { empty, chroma } = Note.get(note);
  if (empty) throw new RangeError(`"${note}" is not a note name, A to G with b or #`);
  return chroma;
};

/**
 * A note name as a player would call it: no double accidentals, and C, E, F or B where these are
 * meant by B#, Fb, E# or Cb. The side (flat or sharp) of the other names stays.
 * @example plainNote("E#") // => "F"
 */
export const plainNote = (note: string): string => {
  pitchClassOf(note);
  return Note.simplify(note);
};

/**
 * Accidentals as typed on any keyboard: the printed flat and sharp signs become b and #.
 * @example plainAccidentals("B♭/F♯") // => "Bb/F#"
 */
export const plainAccidentals = (text: string): string =>
  text.replaceAll("♭", "b").replaceAll("♯", "#");

/**
 * The name of a pitch class (0 to 11), its black keys as flats or as sharps.
 * @example noteNameOf(10, true) // => "Bb"
 */
export const noteNameOf = (pitchClass: number, flat: boolean): string => {
  const names = flat
    ? ["C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B"]
    : ["C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"];
  const name = names[pitchClass];
  if (name === undefined) throw new RangeError(`pitch class ${pitchClass} is not 0 to 11`);
  return name;
};

/**
 * Whether a key is written with flats; one without any accidental counts as one with sharps.
 * @example hasFlats({ tonic: "D", mode: "minor" }) // => true
 */
export const hasFlats = ({ tonic, mode }: Key): boolean =>
  (mode === "major" ? TonalKey.majorKey(tonic) : TonalKey.minorKey(tonic)).keySignature.startsWith(
    "b",
  );
