import { eighthsIn, eighthsInBeat } from "../chart/pulse.ts";
import type { Meter } from "../chart/song.ts";
import {
  type Bpm,
  bpm,
  type Milliseconds,
  milliseconds,
  type Seconds,
  seconds,
  TICKS_PER_EIGHTH,
  TICKS_PER_QUARTER,
  type Tick,
  tick,
} from "../units.ts";

/**
 * Ticks in one beat of the meter: a quarter, a half note in 2/2, a dotted quarter in 6/8 and 9/8.
 * @example ticksPerBeat({ beats: 6, unit: 8 }) // => 720
 */
export const ticksPerBeat = (meter: Meter): Tick => tick(eighthsInBeat(meter) * TICKS_PER_EIGHTH);

/**
 * Beats in one full bar of the meter: those of the signature, but two in 6/8 and three in 9/8.
 * @example beatsPerBar({ beats: 6, unit: 8 }) // => 2
 */
export const beatsPerBar = (meter: Meter): number => eighthsIn(meter) / eighthsInBeat(meter);

/**
 * Ticks in one full bar of the meter.
 * @example ticksPerBar({ beats: 3, unit: 4 }) // => 1440
 */
export const ticksPerBar = (meter: Meter): Tick => tick(eighthsIn(meter) * TICKS_PER_EIGHTH);

/**
 * Seconds that one tick lasts when `tempo` counts beats of the meter: 100 in 2/2 is 200 quarters a
 * minute, in 6/8 150. Throws where the tempo is not above 0.
 * @example secondsPerTick({ beats: 2, unit: 2 }, 100) // => 0.000625
 */
export const secondsPerTick = (meter: Meter, tempo: Bpm): number => {
  if (!(tempo > 0 && Number.isFinite(tempo))) {
    throw new RangeError(`a tempo of ${tempo} beats a minute is not above 0`);
  }
  return 60 / (tempo * ticksPerBeat(meter));
};

/**
 * A tempo in quarter notes a minute, whatever the meter's beat is.
 * @example quartersPerMinute({ beats: 6, unit: 8 }, 100) // => 150
 */
export const quartersPerMinute = (meter: Meter, tempo: Bpm): number =>
  (tempo * ticksPerBeat(meter)) / TICKS_PER_QUARTER;

/**
 * How long a number of ticks lasts; of either sign.
 * @example ticksToSeconds(240, { beats: 2, unit: 2 }, 120) // => 0.125
 */
export const ticksToSeconds = (ticks: Tick, meter: Meter, tempo: Bpm): Seconds =>
  seconds(ticks * secondsPerTick(meter, tempo));

/**
 * How many ticks pass in a time; of either sign, and not rounded to whole ticks.
 * @example secondsToTicks(1.5, { beats: 3, unit: 4 }, 120) // => 1440
 */
export const secondsToTicks = (time: Seconds, meter: Meter, tempo: Bpm): Tick =>
  tick(time / secondsPerTick(meter, tempo));

/**
 * How long an eighth note lasts.
 * @example eighthNote({ beats: 2, unit: 2 }, 120) // => 125
 */
export const eighthNote = (meter: Meter, tempo: Bpm): Milliseconds =>
  milliseconds(1000 * TICKS_PER_EIGHTH * secondsPerTick(meter, tempo));

/**
 * The tempo, in beats of the meter a minute, at which an eighth note lasts so long.
 * @example tempoOfEighth({ beats: 2, unit: 2 }, 125) // => 120
 */
export const tempoOfEighth = (meter: Meter, eighth: Milliseconds): Bpm =>
  bpm(60_000 / ((eighth * ticksPerBeat(meter)) / TICKS_PER_EIGHTH));
