import { fretDistance } from "../neck/fretDistance.ts";
import {
  type Fret,
  fret,
  type Millimetres,
  type Milliseconds,
  millimetres,
  milliseconds,
} from "../units.ts";

/** The two numbers of a player's hand: time to start, and time for each bit of difficulty. */
export type Hand = {
  readonly start: Milliseconds;
  readonly perBit: Milliseconds;
};

/**
 * What each finger that is formed anew adds to a shift: a design choice between the 40 and 60 ms
 * that a re-fingering is worth here; no published constant.
 */
export const REFORM_TIME: Milliseconds = milliseconds(50);

/**
 * How exactly a shift must land: half the fret space at the arrival, since a finger must come down
 * in the half beside the fret wire. Frets from 1 on.
 */
export const landingWidth = (target: Fret, scaleLength: Millimetres): Millimetres =>
  millimetres(
    (fretDistance(target, scaleLength) - fretDistance(fret(target - 1), scaleLength)) / 2,
  );

/**
 * How hard a shift is, in bits: Fitts's law in Shannon's form, log2(D/W + 1) (MacKenzie 1992).
 * Distance not negative, width above 0; a distance of 0 is 0 bits.
 * @example difficultyBits(30, 10) // => 2
 */
export const difficultyBits = (distance: Millimetres, width: Millimetres): number =>
  Math.log2(distance / width + 1);

/**
 * The time that a shift needs: start + perBit * bits. A hand that stays needs none. The law was
 * measured on aimed arm movements, not on a banjo.
 * @example Math.round(shiftTime({ start: 30, perBit: 75 }, 54.5, 13.23)) // => 207
 */
export const shiftTime = (hand: Hand, distance: Millimetres, width: Millimetres): Milliseconds =>
  milliseconds(distance === 0 ? 0 : hand.start + hand.perBit * difficultyBits(distance, width));
