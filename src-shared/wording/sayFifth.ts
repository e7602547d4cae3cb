import type { Chord } from "../harmony/chord.ts";
import { noteNameOf } from "../harmony/noteName.ts";
import type { Neck } from "../neck/neck.ts";
import { pitchAt } from "../neck/pitchAt.ts";
import { fifthBelongs } from "../roll/fifthBelongs.ts";
import { fret } from "../units.ts";
import { words } from "../wordTable.ts";

/**
 * Whether the open fifth string, raised with the capo, belongs to a chord: null where it does, else
 * why it is better left out. The score never plays it there.
 */
export const sayFifth = (chord: Chord, neck: Neck): string | null => {
  const pitchClass = pitchAt(neck, { string: 5, fret: fret(0) }) % 12;
  const flat = /b/.test(chord.root) || chord.root === "F";
  return fifthBelongs(chord, neck)
    ? null
    : words.hand.fifthOut(noteNameOf(pitchClass, flat), chord.name);
};
