import { Note } from "tonal";
import type { PerString, Tuning } from "../neck/neck.ts";
import { tuningNamed, tunings } from "../neck/tuningTable.ts";
import { type Midi, midi } from "../units.ts";
import { words } from "../wordTable.ts";
import { plainAccidentals } from "./noteName.ts";
import { type Refusal, refuse } from "./refusal.ts";

/** A tuning as read, or why it could not be. */
export type TuningReading = { readonly ok: true; readonly tuning: Tuning } | Refusal;

/** C2 and C6: no string of a banjo is tuned beyond them. From memory, no published source. */
const LOWEST = 36;
const HIGHEST = 84;

const pitchOf = (name: string): Midi | null => {
  const pitch = /^[A-G][b#]?\d$/.test(name) ? Note.midi(name) : null;
  return pitch !== null && pitch >= LOWEST && pitch <= HIGHEST ? midi(pitch) : null;
};

/**
 * Reads a tuning: one of the tuning table by its name, or one's own as five notes with octaves, from
 * the fifth string to the first, as tunings are spoken. Notes lie between C2 and C6.
 * @example readTuning("F#4 D3 F#3 A3 E4").ok // => true
 */
export const readTuning = (text: string): TuningReading => {
  const named = tuningNamed(text);
  if (named) {
    return { ok: true, tuning: named };
  }
  const names = plainAccidentals(text).trim().split(/\s+/);
  const pitches = names.map(pitchOf);
  const [fifth, fourth, third, second, first, ...more] = pitches;
  if (fifth && fourth && third && second && first && more.length === 0) {
    const open: PerString<Midi> = [first, second, third, fourth, fifth];
    return { ok: true, tuning: { name: names.join(" "), open } };
  }
  const shown = text.length > 24 ? `${text.slice(0, 24)}…` : text;
  const known = tunings.map(({ name }) => name).join(", ");
  return refuse(words.notes.tuning.says(shown), words.notes.tuning.try(known));
};
