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
 * Ticks in one beat of the meter: its unit, a quarter or a half note.
 * @example ticksPerBeat({ beats: 2, unit: 2 }) // => 960
 */
export const ticksPerBeat = (meter: Meter): Tick => tick((4 / meter.unit) * TICKS_PER_QUARTER);

/**
 * Ticks in one full bar of the meter.
 * @example ticksPerBar({ beats: 3, unit: 4 }) // => 1440
 */
export const ticksPerBar = (meter: Meter): Tick => tick(meter.beats * ticksPerBeat(meter));

/**
 * Seconds that one tick lasts when `tempo` counts beats of the meter's unit: 100 in 2/2 is 200
 * quarters a minute. Throws where the tempo is not above 0.
 * @example secondsPerTick({ beats: 2, unit: 2 }, 100) // => 0.000625
 */
export const secondsPerTick = (meter: Meter, tempo: Bpm): number => {
  if (!(tempo > 0 && Number.isFinite(tempo))) {
    throw new RangeError(`a tempo of ${tempo} beats a minute is not above 0`);
  }
  return 60 / (tempo * ticksPerBeat(meter));
};

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
 * The tempo, in beats of the meter's unit, at which an eighth note lasts so long.
 * @example tempoOfEighth({ beats: 2, unit: 2 }, 125) // => 120
 */
export const tempoOfEighth = (meter: Meter, eighth: Milliseconds): Bpm =>
  bpm(60_000 / ((eighth * ticksPerBeat(meter)) / TICKS_PER_EIGHTH));
