import type { Meter } from "../chart/song.ts";
import type { PatternMeter } from "./pattern.ts";

/** Eighths in one measure of each meter. */
export const eighthsOfMeter: Readonly<Record<PatternMeter, number>> = {
  "4/4": 8,
  "3/4": 6,
  "2/4": 4,
  "6/8": 6,
};

/** From one accent of a meter to the next, in eighths: 4/4 on 1 and 3, 6/8 on 1 and 4, others on 1. */
const strongEvery: Readonly<Record<PatternMeter, number>> = {
  "4/4": 4,
  "3/4": 6,
  "2/4": 4,
  "6/8": 3,
};

/**
 * Whether an eighth, counted from a bar line, carries the meter. Common practice, no published
 * source.
 * @example isStrong("6/8", 9) // => true
 */
export const isStrong = (meter: PatternMeter, eighth: number): boolean =>
  eighth % strongEvery[meter] === 0;

/**
 * Whether an eighth, counted from a bar line, is a beat: a quarter, in 6/8 a dotted one.
 * @example isBeat("4/4", 2) // => true
 */
export const isBeat = (meter: PatternMeter, eighth: number): boolean =>
  eighth % (meter === "6/8" ? 3 : 2) === 0;

/**
 * The meter whose patterns a song takes: cut time takes those of 4/4.
 * @example patternMeterOf({ beats: 2, unit: 2 }) // => "4/4"
 */
export const patternMeterOf = ({ beats, unit }: Meter): PatternMeter => {
  const eighths = (beats * 8) / unit;
  switch (eighths) {
    case 8:
      return "4/4";
    case 6:
      return beats === 6 ? "6/8" : "3/4";
    case 4:
      return "2/4";
    default:
      throw new Error(`no patterns for ${beats}/${unit}`);
  }
};
