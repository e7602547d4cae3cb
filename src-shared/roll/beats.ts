import { eighthsIn } from "../chart/pulse.ts";
import type { Meter } from "../chart/song.ts";
import type { PatternMeter } from "./pattern.ts";

/** Eighths in one measure of each meter. */
export const eighthsOfMeter: Readonly<Record<PatternMeter, number>> = {
  "4/4": 8,
  "3/4": 6,
  "2/4": 4,
  "6/8": 6,
  "9/8": 9,
};

const signatures: Readonly<Record<PatternMeter, Meter>> = {
  "4/4": { beats: 4, unit: 4 },
  "3/4": { beats: 3, unit: 4 },
  "2/4": { beats: 2, unit: 4 },
  "6/8": { beats: 6, unit: 8 },
  "9/8": { beats: 9, unit: 8 },
};

/**
 * The time signature that a pattern is written in.
 * @example meterOfPattern("6/8") // => { beats: 6, unit: 8 }
 */
export const meterOfPattern = (meter: PatternMeter): Meter => signatures[meter];

/** From one accent of a meter to the next, in eighths: 4/4 on 1 and 3, 6/8 and 9/8 on each dotted quarter, others on 1. */
const strongEvery: Readonly<Record<PatternMeter, number>> = {
  "4/4": 4,
  "3/4": 6,
  "2/4": 4,
  "6/8": 3,
  "9/8": 3,
};

/**
 * Whether an eighth, counted from a bar line, carries the meter. Common practice, no published
 * source.
 * @example isStrong("6/8", 9) // => true
 */
export const isStrong = (meter: PatternMeter, eighth: number): boolean =>
  eighth % strongEvery[meter] === 0;

const inThrees = (meter: PatternMeter): boolean => meter === "6/8" || meter === "9/8";

/**
 * Whether an eighth, counted from a bar line, is a beat: a quarter, in 6/8 and 9/8 a dotted one.
 * @example isBeat("4/4", 2) // => true
 */
export const isBeat = (meter: PatternMeter, eighth: number): boolean =>
  eighth % (inThrees(meter) ? 3 : 2) === 0;

/**
 * The meter whose patterns a song takes: cut time takes those of 4/4.
 * @example patternMeterOf({ beats: 2, unit: 2 }) // => "4/4"
 */
export const patternMeterOf = (meter: Meter): PatternMeter => {
  switch (eighthsIn(meter)) {
    case 9:
      return "9/8";
    case 8:
      return "4/4";
    case 6:
      return meter.beats === 6 ? "6/8" : "3/4";
    case 4:
      return "2/4";
    default:
      throw new Error(`no patterns for ${meter.beats}/${meter.unit}`);
  }
};
