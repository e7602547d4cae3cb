import { fret } from "../units.ts";
import type { Neck, Place, StringNumber } from "./neck.ts";
import { lowestFret, pitchAt, SHORT_STRING_NUT } from "./pitchAt.ts";

const allStrings: readonly StringNumber[] = [1, 2, 3, 4, 5];

/**
 * Every place that sounds, string 1 first, each string from low to high. Fret 0 is the open string,
 * also under a capo; then come the frets above the capo and, on the short string, above its own
 * raised nut.
 */
export const everyPlace = (neck: Neck): readonly Place[] =>
  allStrings.flatMap((string) => {
    const first = lowestFret(neck) + (string === 5 ? SHORT_STRING_NUT : 0);
    const stopped = Array.from({ length: Math.max(0, neck.lastFret - first + 1) }, (_, index) =>
      fret(first + index),
    );
    return [fret(0), ...stopped].map((each) => ({ string, fret: each }));
  });

/** The places of `everyPlace` that sound a pitch class, 0 (C) to 11 (B), in any octave. */
export const placesOf = (neck: Neck, pitchClass: number): readonly Place[] =>
  everyPlace(neck).filter((place) => pitchAt(neck, place) % 12 === pitchClass);
