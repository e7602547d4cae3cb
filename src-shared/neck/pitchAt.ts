import { type Fret, fret, type Midi, midi } from "../units.ts";
import type { Neck, PerString, Place, StringNumber } from "./neck.ts";

/** The fret at which the short string's nut stands. Common practice, no published source. */
export const SHORT_STRING_NUT = 5;

/**
 * The value that belongs to a string.
 * @example ofString([10, 20, 30, 40, 50], 3) // => 30
 */
export const ofString = <T>(values: PerString<T>, string: StringNumber): T => {
  const index = (string - 1) as 0 | 1 | 2 | 3 | 4;
  return values[index];
};

/**
 * The pitch of a string stopped at a fret counted from the nut. Fret 0 is the open string, which
 * the capo raises. The short string counts by the neck too: fret 7 on it is two semitones above its
 * open note; a place that does not exist (behind the capo, or on the short string's missing part)
 * sounds as the open string.
 */
export const pitchAt = (neck: Neck, place: Place): Midi => {
  const open = ofString(neck.tuning.open, place.string);
  if (place.string === 5) {
    return midi(open + Math.max(neck.capo, place.fret - SHORT_STRING_NUT));
  }
  return midi(open + Math.max(neck.capo, place.fret));
};

/** The lowest fret a finger can stop: the one above the capo. */
export const lowestFret = (neck: Neck): Fret => fret(neck.capo + 1);
