import type { Meter } from "../chart/song.ts";
import { TICKS_PER_EIGHTH, TICKS_PER_QUARTER, type Tick, tick } from "../units.ts";

/** Where the off-beat eighth falls at full bounce: on the third triplet of the quarter. */
const THIRD_TRIPLET = (2 * TICKS_PER_QUARTER) / 3;

/**
 * Where a tick of the written song is heard: each quarter's first eighth lasts longer and its second
 * shorter, from even (0) to two to one (1), and everything between goes along in proportion. Quarters
 * stay where they are, and so does everything in 6/8 and 9/8, whose eighths come in
 * threes. In whole ticks.
 * Common practice, no published source.
 * @example bouncedTick(240, 1, { beats: 4, unit: 4 }) // => 320
 * @example bouncedTick(240, 1, { beats: 6, unit: 8 }) // => 240
 */
export const bouncedTick = (at: Tick, bounce: number, meter: Meter): Tick => {
  if (meter.unit === 8) {
    return at;
  }
  const quarter = Math.floor(at / TICKS_PER_QUARTER) * TICKS_PER_QUARTER;
  const into = at - quarter;
  const turn = TICKS_PER_EIGHTH + bounce * (THIRD_TRIPLET - TICKS_PER_EIGHTH);
  const heard =
    into <= TICKS_PER_EIGHTH
      ? (into * turn) / TICKS_PER_EIGHTH
      : turn +
        ((into - TICKS_PER_EIGHTH) * (TICKS_PER_QUARTER - turn)) /
          (TICKS_PER_QUARTER - TICKS_PER_EIGHTH);
  return tick(quarter + Math.round(heard));
};
