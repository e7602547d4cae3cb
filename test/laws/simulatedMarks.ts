import type { HandMark } from "../../src-shared/practice/handMark.ts";
import type { Hand } from "../../src-shared/route/movement.ts";
import { milliseconds } from "../../src-shared/units.ts";

/** Numbers from 0 to 1, the same for the same seed (mulberry32, a public-domain generator). */
export const chance = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
};

/** A number of the normal distribution, by Box and Muller (1958). */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Shifts of 2 to 12 frets are so hard (test/src-shared/route/movement.test.ts). */
const shifts = [1.6, 2.22, 2.36, 3.24, 3.62, 4.15, 5.11];
/** Eighths at 60 to 160 half notes a minute, in ms. */
const eighths = [250, 214.3, 187.5, 166.7, 150, 136.4, 125, 115.4, 107.1, 93.8];

/**
 * Marks as a player of this hand gives them: each try takes the hand's time give or take `spreadSd` ms
 * (normal, where the fit believes in a logistic curve), one to three eighths are free for it, and a
 * share of the marks says the contrary.
 */
export const simulatedMarks = (
  hand: Hand,
  count: number,
  wrong: number,
  random: () => number,
  spreadSd = 35,
): readonly HandMark[] =>
  Array.from({ length: count }, () => {
    const bits = shifts[Math.floor(random() * shifts.length)] ?? 3;
    const eighth = eighths[Math.floor(random() * eighths.length)] ?? 150;
    const window = milliseconds(eighth * (1 + Math.floor(random() * 3)));
    const took = hand.start + hand.perBit * bits + spreadSd * normal(random);
    const isClean = took <= window !== random() < wrong;
    return { bits, window, clean: isClean ? 1 : 0, notYet: isClean ? 0 : 1 };
  });
