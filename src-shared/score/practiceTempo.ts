import type { Meter } from "../chart/song.ts";
import { type Bpm, bpm } from "../units.ts";
import { quartersPerMinute } from "./tempo.ts";

/** Slowest and fastest practice tempo, quarter notes a minute, in every meter. */
const QUARTERS = { low: 30, high: 320 };
/** No tempo is kept beyond these, in beats of the meter a minute. */
const KEPT = { low: 15, high: 320 };
/** Room above a chart's own tempo. */
const ROOM = 1.2;
const STEP = 0.05;

/** Slowest and fastest, both included. */
export type TempoRange = { readonly low: number; readonly high: number };

/**
 * The tempos to practise a song at, in beats of its meter a minute: from 30 to 320 quarters, and
 * beyond only for the chart's own tempo and some room above it.
 * @example practiceRange({ beats: 2, unit: 2 }, 100) // => { low: 15, high: 160 }
 * @example practiceRange({ beats: 4, unit: 4 }, 100) // => { low: 30, high: 320 }
 */
export const practiceRange = (meter: Meter, own: Bpm): TempoRange => {
  const perBeat = quartersPerMinute(meter, bpm(1));
  return {
    low: Math.max(KEPT.low, Math.min(QUARTERS.low / perBeat, own)),
    high: Math.min(KEPT.high, Math.max(QUARTERS.high / perBeat, Math.round(own * ROOM))),
  };
};

/**
 * The next multiple of 5 % of a chart's own tempo below (-1) or above (1) a tempo. One that was rounded
 * to a whole number from such a multiple counts as it.
 * @example steppedTempo(99, 110, 1) // => 104.5
 */
export const steppedTempo = (tempo: number, own: number, by: -1 | 1): number => {
  const step = own * STEP;
  const at = tempo / step;
  const near = Math.abs(at - Math.round(at)) < 0.5 / step ? Math.round(at) : at;
  return step * (by > 0 ? Math.floor(near) + 1 : Math.ceil(near) - 1);
};
