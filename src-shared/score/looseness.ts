import type { Part } from "./score.ts";

/** Who plays a stroke. */
export type PlayerName = "banjo" | Part;

/** Where a stroke stands in the song: what its chance is drawn by. */
export type StrokePlace = {
  readonly player: PlayerName;
  /** 0-based bar of the song as played. */
  readonly bar: number;
  /** Ticks from the bar line. */
  readonly into: number;
};

/**
 * At full looseness the farthest that a stroke is from its place, in ticks: 5 % of an eighth. Drawn
 * from a triangle, its standard deviation is then 2 % of an eighth, the steady end of what tapping
 * experiments report (2 to 4 % of the interval; Repp, Psychonomic Bulletin & Review 12, 2005), and under
 * the 2.5 % at which one displaced tone is noticed (Friberg and Sundberg, J. Acoust. Soc. Am. 98, 1995).
 * Ticks and not milliseconds, because both figures go with the interval; at 120 quarters a minute it
 * is 12.5 ms, and two players are never farther apart than twice that: less than the 30 to 50 ms of
 * good ensembles (Rasch 1979, from memory).
 */
export const LOOSEST_TICKS = 12;
/** At full looseness a stroke is at most so much louder or softer: about 1 dB, hardly noticed. */
export const LOOSEST_LEVEL = 0.12;

const seeds: Readonly<Record<PlayerName, number>> = {
  banjo: 11,
  bass: 23,
  guitar: 37,
  chop: 53,
  click: 71,
};

/** One round of the 32-bit finalizer of MurmurHash3 (Appleby, public domain; from memory). */
const mixed = (value: number): number => {
  let bits = value | 0;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
};

/** From 0 (included) to 1 (not). */
const share = ({ player, bar, into }: StrokePlace, salt: number): number =>
  mixed(mixed(mixed(seeds[player] + 101 * salt) + bar) + into) / 2 ** 32;

/**
 * How far a stroke is from its place, in whole ticks, early or late: always the same for the same place,
 * and not touched by what happens in other bars. `human` from 0 (exact) to 1 (12 ticks at most).
 * @example ticksOff({ player: "bass", bar: 3, into: 960 }, 0) // => 0
 */
export const ticksOff = (place: StrokePlace, human: number): number =>
  Math.round(human * LOOSEST_TICKS * (share(place, 1) + share(place, 2) - 1)) + 0;

/**
 * How much louder or softer than usual a stroke is, as a factor: from 0.88 to 1.12 at a `human` of 1.
 * @example levelOff({ player: "chop", bar: 3, into: 480 }, 0) // => 1
 */
export const levelOff = (place: StrokePlace, human: number): number =>
  1 + human * LOOSEST_LEVEL * (2 * share(place, 3) - 1);
