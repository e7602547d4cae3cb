import { Note, Chord as TonalChord } from "tonal";
import type { Chord } from "./chord.ts";
import { noteNameOf, plainNote } from "./noteName.ts";

/**
 * The name of a pitch class (0 to 11) as a tone of a chord, without double accidentals, B#, Cb, E# and
 * Fb; one that is no tone of it is named as the key's side has it.
 * @example spelledIn({ root: "Bb", quality: "", bass: null }, 10, false) // => "Bb"
 * @example spelledIn({ root: "Bb", quality: "", bass: null }, 3, false) // => "D#"
 */
export const spelledIn = (
  { root, quality, bass }: Pick<Chord, "root" | "quality" | "bass">,
  pitchClass: number,
  flats: boolean,
): string => {
  const { notes } = TonalChord.get(`${root}${quality === "" ? "M" : quality}`);
  const tone = [...notes, ...(bass === null ? [] : [bass])].find(
    (note) => Note.chroma(note) === pitchClass,
  );
  return tone === undefined ? noteNameOf(pitchClass, flats) : plainNote(tone);
};
