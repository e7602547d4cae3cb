import type { Chord } from "../harmony/chord.ts";
import type { Neck } from "../neck/neck.ts";
import { pitchAt } from "../neck/pitchAt.ts";
import { fret } from "../units.ts";

/** Whether the open fifth string, raised with the capo, is a tone of a chord. */
export const fifthBelongs = (chord: Chord, neck: Neck): boolean => {
  const pitchClass = pitchAt(neck, { string: 5, fret: fret(0) }) % 12;
  return chord.tones.some((tone) => tone.pitchClass === pitchClass);
};
