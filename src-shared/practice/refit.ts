import { handTable } from "../route/handTable.ts";
import type { Hand } from "../route/movement.ts";
import { milliseconds } from "../units.ts";
import { countMarks, type HandMark } from "./handMark.ts";

/*
 * How a player's own hand is found: a shift is clean where the time left for it is longer than what
 * the hand needs, start + perBit * bits (Fitts's law, Shannon's form, MacKenzie 1992), this time give
 * or take a spread from one try to the next; and now and then a mark is simply wrong. What start and
 * perBit come to is Bayes's rule, summed over a grid: no step can fail to converge, and few marks
 * leave the borrowed constants nearly as they are. Spread and share of wrong marks are not known
 * either, and are summed over.
 */

/** What is believed before any mark: middles and standard deviations in ms, weights that sum to 1. */
export type Belief = {
  readonly start: { readonly mean: number; readonly sd: number };
  readonly perBit: { readonly mean: number; readonly sd: number };
  /** Spread of the time from one try to the next: the scale of a logistic curve in ms. */
  readonly spreads: readonly { readonly scale: number; readonly weight: number }[];
  /** Share of marks that say the contrary of what happened; each is held to be as likely. */
  readonly wrong: readonly number[];
};

/**
 * What is believed of a hand that has not been seen: about the usual one, and wide enough for the
 * learner's and the skilled. A design choice; no published distribution.
 */
export const belief: Belief = {
  start: { mean: handTable.default.start, sd: 40 },
  perBit: { mean: handTable.default.perBit, sd: 30 },
  spreads: [
    { scale: 9, weight: 0.2 },
    { scale: 18, weight: 0.4 },
    { scale: 36, weight: 0.4 },
  ],
  wrong: [0.02, 0.08, 0.18],
};

/** A hand as marks tell it, with how sure that is. */
export type FittedHand = {
  readonly hand: Hand;
  /** Standard deviations, in ms and ms per bit, and how the two go together (ms² per bit). */
  readonly startSd: number;
  readonly perBitSd: number;
  readonly covariance: number;
  readonly marks: number;
};

/** The normal distribution has nine tenths within so many standard deviations of its middle. */
const NINE_TENTHS = 1.6449;

/** A value with the interval that holds it nine times in ten, in the unit of the value. */
export type Estimate = { readonly value: number; readonly low: number; readonly high: number };

const around = (value: number, sd: number): Estimate => ({
  value,
  low: value - NINE_TENTHS * sd,
  high: value + NINE_TENTHS * sd,
});

/** The time to start, in ms. */
export const startOf = ({ hand, startSd }: FittedHand): Estimate => around(hand.start, startSd);

/** The time for each bit, in ms. */
export const perBitOf = ({ hand, perBitSd }: FittedHand): Estimate => around(hand.perBit, perBitSd);

/** The time that a shift of so many bits needs, in ms: far surer than either constant alone. */
export const needOf = (fit: FittedHand, bits: number): Estimate => {
  const variance = fit.startSd ** 2 + 2 * bits * fit.covariance + (bits * fit.perBitSd) ** 2;
  return around(fit.hand.start + fit.hand.perBit * bits, Math.sqrt(Math.max(0, variance)));
};

/**
 * What is believed of start (a) and perBit (b) before any mark, as the logarithm of a density. A hand
 * that would need no time for one bit is none.
 */
export const logBelief = (a: number, b: number): number =>
  b <= 0 || a + b <= 0
    ? Number.NEGATIVE_INFINITY
    : -(((a - belief.start.mean) / belief.start.sd) ** 2) / 2 -
      ((b - belief.perBit.mean) / belief.perBit.sd) ** 2 / 2;

/** The logarithm of how likely the marks are, of a hand with start a and perBit b. */
export const logLikelihood = (marks: readonly HandMark[], a: number, b: number): number => {
  const logs: number[] = [];
  for (const { scale, weight } of belief.spreads) {
    const sums = belief.wrong.map(() => Math.log(weight / belief.wrong.length));
    for (const { bits, window, clean, notYet } of marks) {
      const inTime = 1 / (1 + Math.exp((a + b * bits - window) / scale));
      for (const [index, wrong] of belief.wrong.entries()) {
        const p = wrong + (1 - 2 * wrong) * inTime;
        const log =
          (clean > 0 ? clean * Math.log(p) : 0) + (notYet > 0 ? notYet * Math.log(1 - p) : 0);
        sums[index] = (sums[index] ?? 0) + log;
      }
    }
    logs.push(...sums);
  }
  const top = Math.max(...logs);
  return top + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - top), 0));
};

/**
 * The grid lies along the time for a shift of middling difficulty (`at` bits) and the time for each
 * bit: these two hardly hang together, start and perBit very much.
 */
type Grid = {
  readonly need: number;
  readonly needStep: number;
  readonly perBit: number;
  readonly perBitStep: number;
};

/** Points each way from the middle of the grid. */
const ARM = 7;

type Moments = {
  readonly need: number;
  readonly needSd: number;
  readonly perBit: number;
  readonly perBitSd: number;
  readonly together: number;
};

const momentsOn = (marks: readonly HandMark[], at: number, grid: Grid): Moments => {
  const points: { readonly need: number; readonly b: number; readonly log: number }[] = [];
  for (let row = -ARM; row <= ARM; row += 1) {
    for (let column = -ARM; column <= ARM; column += 1) {
      const need = grid.need + row * grid.needStep;
      const b = grid.perBit + column * grid.perBitStep;
      const believed = logBelief(need - b * at, b);
      if (believed > Number.NEGATIVE_INFINITY) {
        points.push({ need, b, log: believed + logLikelihood(marks, need - b * at, b) });
      }
    }
  }
  const top = Math.max(...points.map(({ log }) => log));
  const weighted = points.map((point) => ({ ...point, weight: Math.exp(point.log - top) }));
  const all = weighted.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (point: (typeof points)[number]) => number): number =>
    weighted.reduce((sum, point) => sum + of(point) * point.weight, 0) / all;
  const need = mean((point) => point.need);
  const perBit = mean((point) => point.b);
  return {
    need,
    perBit,
    needSd: Math.sqrt(mean((point) => (point.need - need) ** 2)),
    perBitSd: Math.sqrt(mean((point) => (point.b - perBit) ** 2)),
    together: mean((point) => (point.need - need) * (point.b - perBit)),
  };
};

/** A finer grid where the last one found the weight; it reaches five standard deviations out. */
const closer = (last: Grid, { need, needSd, perBit, perBitSd }: Moments): Grid => ({
  need,
  needStep: Math.max(needSd, last.needStep / 2) * (5 / ARM),
  perBit,
  perBitStep: Math.max(perBitSd, last.perBitStep / 2) * (5 / ARM),
});

/** So many grids, each laid where the one before found the weight. */
const PASSES = 4;

/**
 * The hand that marks tell, by Bayes's rule from `belief`. Without marks it is the usual hand within
 * what is believed.
 */
export const refit = (marks: readonly HandMark[]): FittedHand => {
  const { clean, notYet } = countMarks(marks);
  const count = clean + notYet;
  const at =
    count === 0
      ? 3
      : marks.reduce((sum, mark) => sum + mark.bits * (mark.clean + mark.notYet), 0) / count;
  const { start, perBit } = belief;
  const needSd = Math.hypot(start.sd, perBit.sd * at);
  let grid: Grid = {
    need: start.mean + perBit.mean * at,
    needStep: (4 * needSd) / ARM,
    perBit: perBit.mean,
    perBitStep: (4 * perBit.sd) / ARM,
  };
  let found = momentsOn(marks, at, grid);
  for (let pass = 1; pass < PASSES; pass += 1) {
    grid = closer(grid, found);
    found = momentsOn(marks, at, grid);
  }
  const variance = found.needSd ** 2 - 2 * at * found.together + (at * found.perBitSd) ** 2;
  return {
    hand: {
      start: milliseconds(found.need - found.perBit * at),
      perBit: milliseconds(found.perBit),
    },
    startSd: Math.sqrt(Math.max(0, variance)),
    perBitSd: found.perBitSd,
    covariance: found.together - at * found.perBitSd ** 2,
    marks: count,
  };
};
