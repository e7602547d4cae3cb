import { type Refusal, refuse } from "../harmony/refusal.ts";
import { type Bpm, bpm, type Fret, fret } from "../units.ts";
import { words } from "../wordTable.ts";
import { beatNotes, eighthsInBeat } from "./pulse.ts";
import type { Meter } from "./song.ts";

/** A header value as read, or why it could not be. */
export type ValueReading<T> = { readonly ok: true; readonly value: T } | Refusal;

const meters: ReadonlyMap<string, Meter> = new Map<string, Meter>([
  ["4/4", { beats: 4, unit: 4 }],
  ["3/4", { beats: 3, unit: 4 }],
  ["2/4", { beats: 2, unit: 4 }],
  ["2/2", { beats: 2, unit: 2 }],
  ["6/8", { beats: 6, unit: 8 }],
  ["9/8", { beats: 9, unit: 8 }],
  ["C", { beats: 4, unit: 4 }],
  ["C|", { beats: 2, unit: 2 }],
]);

const WRITE_TIME = words.notes.meter.try;

const shorten = (text: string): string => (text.length > 24 ? `${text.slice(0, 24)}…` : text);

/**
 * Reads a time signature: 4/4, 3/4, 2/4, 2/2, 6/8, 9/8, C (4/4) or C| (2/2).
 * @example readMeter("C|") // => { ok: true, value: { beats: 2, unit: 2 } }
 */
export const readMeter = (text: string): ValueReading<Meter> => {
  const meter = meters.get(text.replace(/\s+/g, "").toUpperCase());
  if (meter !== undefined) return { ok: true, value: meter };
  return /^\d+\s*\/\s*\d+$/.test(text)
    ? refuse(words.notes.meter.noPatterns(shorten(text)), WRITE_TIME)
    : refuse(words.notes.meter.says(shorten(text)), WRITE_TIME);
};

/** 30 quarters a minute where a half note is the beat. */
const LOWEST_TEMPO = 15;
const HIGHEST_TEMPO = 320;
/** Note values that a tempo may name, in eighths. */
const namedBeats: ReadonlyMap<string, number> = new Map([
  ["1/2", 4],
  ["1/4", 2],
  ["1/8", 1],
  ["3/8", 3],
]);

/**
 * Reads a tempo as beats of the meter per minute, 15 to 320; "1/2=110", "1/4=110", "3/8=110" (a
 * dotted quarter) and "1/8=110" name their own note value and are converted.
 * @example readTempo("1/4=210", { beats: 2, unit: 2 }) // => { ok: true, value: 105 }
 * @example readTempo("1/4=150", { beats: 6, unit: 8 }) // => { ok: true, value: 100 }
 */
export const readTempo = (text: string, meter: Meter): ValueReading<Bpm> => {
  const parts = /^(?:(1\/[248]|3\/8)\s*=\s*)?(\d{1,4}(?:\.\d{1,3})?)\s*(?:bpm)?$/i.exec(text);
  if (parts === null) {
    return refuse(words.notes.tempo.says(shorten(text)), words.notes.tempo.try(beatNotes(meter)));
  }
  const own = eighthsInBeat(meter);
  const named = namedBeats.get(parts[1] ?? "") ?? own;
  const beats = Math.round((Number(parts[2]) * named * 1000) / own) / 1000;
  return beats >= LOWEST_TEMPO && beats <= HIGHEST_TEMPO
    ? { ok: true, value: bpm(beats) }
    : refuse(
        words.notes.tempo.outOfReach(beats, beatNotes(meter)),
        words.notes.tempo.outOfReachTry(LOWEST_TEMPO, HIGHEST_TEMPO),
      );
};

const HIGHEST_CAPO = 11;

/**
 * Reads a capo's fret, 0 (none) to 11.
 * @example readCapo("2") // => { ok: true, value: 2 }
 */
export const readCapo = (text: string): ValueReading<Fret> =>
  /^\d{1,2}$/.test(text) && Number(text) <= HIGHEST_CAPO
    ? { ok: true, value: fret(Number(text)) }
    : refuse(words.notes.capo.says(shorten(text)), words.notes.capo.try(HIGHEST_CAPO));
