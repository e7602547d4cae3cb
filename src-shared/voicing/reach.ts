import { fretDistance } from "../neck/fretDistance.ts";
import { type Fret, type Millimetres, millimetres } from "../units.ts";

/**
 * The widest grip that voicings may ask for: index to little finger, along the neck. Four frets at
 * fret 1 are just within it. From memory, no published source; hands differ.
 */
export const WIDEST_GRIP: Millimetres = millimetres(105);

/** How far apart two frets are on a neck of that scale length, never negative. */
export const gripSpan = (low: Fret, high: Fret, scaleLength: Millimetres): Millimetres =>
  millimetres(Math.abs(fretDistance(high, scaleLength) - fretDistance(low, scaleLength)));
