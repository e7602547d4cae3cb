import { type Fret, type Millimetres, millimetres } from "../units.ts";

/** 26 1/4 inches, a usual scale length. Common practice, no published source. */
export const USUAL_SCALE_LENGTH: Millimetres = millimetres(666.75);

/**
 * Nut to the wire of a fret: L (1 - 2^(-n/12)), equal temperament. Fret 0 is the nut, fret 12 half
 * the scale; frets need not be whole. Exact to a micrometre, so that sums do not depend on order.
 * @example fretDistance(12, 666.75) // => 333.375
 */
export const fretDistance = (fret: Fret, scaleLength: Millimetres): Millimetres =>
  millimetres(Math.round(1000 * scaleLength * (1 - 2 ** (-fret / 12))) / 1000);
