import { describe, expect, test } from "vitest";
import type { HandMark } from "../../../src-shared/practice/handMark.ts";
import {
  belief,
  type Estimate,
  needOf,
  perBitOf,
  refit,
  startOf,
} from "../../../src-shared/practice/refit.ts";
import { handTable } from "../../../src-shared/route/handTable.ts";
import type { Hand } from "../../../src-shared/route/movement.ts";
import { milliseconds } from "../../../src-shared/units.ts";
import { chance, normal, simulatedMarks } from "../../laws/simulatedMarks.ts";

const FIVE_FRETS = 3.616;
const handOf = (start: number, perBit: number): Hand => ({
  start: milliseconds(start),
  perBit: milliseconds(perBit),
});
const fiveFrets = ({ start, perBit }: Hand): number => start + perBit * FIVE_FRETS;
const holds = ({ low, high }: Estimate, value: number): boolean => low <= value && value <= high;
const rootMeanSquare = (errors: readonly number[]): number =>
  Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);

/**
 * The same posterior by brute force: a fixed, fine grid over start and perBit themselves, every factor
 * of Bayes's rule multiplied out, nothing shared with the fit but the numbers of the belief.
 */
const bruteForce = (marks: readonly HandMark[]) => {
  const points: { readonly a: number; readonly b: number; readonly weight: number }[] = [];
  for (let a = -130; a <= 190; a += 4) {
    for (let b = 2; b <= 200; b += 3) {
      if (a + b > 0) {
        let sum = 0;
        for (const { scale, weight } of belief.spreads) {
          for (const wrong of belief.wrong) {
            let product = weight / belief.wrong.length;
            for (const { bits, window, clean, notYet } of marks) {
              const inTime = 1 / (1 + Math.exp(-(window - (a + b * bits)) / scale));
              const p = inTime * (1 - wrong) + (1 - inTime) * wrong;
              product *= p ** clean * (1 - p) ** notYet;
            }
            sum += product;
          }
        }
        const before =
          Math.exp(-0.5 * ((a - belief.start.mean) / belief.start.sd) ** 2) *
          Math.exp(-0.5 * ((b - belief.perBit.mean) / belief.perBit.sd) ** 2);
        points.push({ a, b, weight: sum * before });
      }
    }
  }
  const all = points.reduce((total, { weight }) => total + weight, 0);
  const mean = (of: (a: number, b: number) => number): number =>
    points.reduce((total, { a, b, weight }) => total + of(a, b) * weight, 0) / all;
  const a = mean((start) => start);
  const b = mean((_, perBit) => perBit);
  return {
    a,
    b,
    sdA: Math.sqrt(mean((start) => (start - a) ** 2)),
    sdB: Math.sqrt(mean((_, perBit) => (perBit - b) ** 2)),
    together: mean((start, perBit) => (start - a) * (perBit - b)),
  };
};

describe("the hand that marks tell", () => {
  test("is without marks the usual hand, give or take what is believed", () => {
    const { hand, startSd, perBitSd, marks } = refit([]);
    expect(marks).toBe(0);
    expect(Math.abs(hand.start - handTable.usual.start)).toBeLessThan(3);
    expect(Math.abs(hand.perBit - handTable.usual.perBit)).toBeLessThan(3);
    expect(startSd / belief.start.sd).toBeCloseTo(1, 0);
    expect(perBitSd / belief.perBit.sd).toBeCloseTo(1, 0);
  });

  test.each([
    [4, 20, 0.1],
    [5, 40, 0.1],
    [6, 60, 0],
  ])("is what brute force over a fixed grid gives (seed %i, %i marks)", (seed, count, wrong) => {
    const marks = simulatedMarks(handOf(18, 83), count, wrong, chance(seed));
    const fit = refit(marks);
    const brute = bruteForce(marks);
    // Both are sums over grids: within a tenth of a standard deviation of each other.
    expect(Math.abs(fit.hand.start - brute.a)).toBeLessThan(0.1 * brute.sdA);
    expect(Math.abs(fit.hand.perBit - brute.b)).toBeLessThan(0.1 * brute.sdB);
    expect(Math.abs(fit.startSd / brute.sdA - 1)).toBeLessThan(0.1);
    expect(Math.abs(fit.perBitSd / brute.sdB - 1)).toBeLessThan(0.1);
    expect(Math.abs(fit.covariance / brute.together - 1)).toBeLessThan(0.2);
  });

  // Root mean square errors over 10 players of each hand (5 with 400 marks) who mark one try in ten wrongly, in ms.
  test.each([
    [40, 45, 30, 15],
    [100, 30, 25, 12],
    [400, 15, 25, 10],
  ] as const)(
    "comes from %i marks, a tenth of them wrong, within %i ms for five frets, %i ms and %i ms a bit",
    (count, inFive, inStart, inPerBit) => {
      for (const hand of [handTable.learner, handTable.usual, handTable.skilled]) {
        const fits = Array.from({ length: count === 400 ? 5 : 10 }, (_, player) =>
          refit(simulatedMarks(hand, count, 0.1, chance(100 * player + count))),
        );
        const errors = (of: (fit: Hand) => number) =>
          rootMeanSquare(fits.map((fit) => of(fit.hand) - of(hand)));
        expect(errors(fiveFrets)).toBeLessThan(inFive);
        expect(errors(({ start }) => start)).toBeLessThan(inStart);
        expect(errors(({ perBit }) => perBit)).toBeLessThan(inPerBit);
      }
    },
    60_000,
  );

  test("has an interval that holds the truth about nine times in ten", () => {
    const held = { start: 0, perBit: 0, five: 0 };
    const players = 150;
    for (let player = 0; player < players; player += 1) {
      const random = chance(7919 * player + 1);
      const hand = handOf(
        belief.start.mean + belief.start.sd * normal(random),
        Math.max(10, belief.perBit.mean + belief.perBit.sd * normal(random)),
      );
      const fit = refit(simulatedMarks(hand, 60, 0.1, random));
      held.start += holds(startOf(fit), hand.start) ? 1 : 0;
      held.perBit += holds(perBitOf(fit), hand.perBit) ? 1 : 0;
      held.five += holds(needOf(fit, FIVE_FRETS), fiveFrets(hand)) ? 1 : 0;
    }
    // 90 % of 150 give or take three times the binomial's standard deviation: 82.7 % to 97.3 %.
    for (const count of Object.values(held)) {
      expect(count / players).toBeGreaterThan(0.827);
      expect(count / players).toBeLessThan(0.973);
    }
  }, 60_000);

  test("is the same whatever order the marks come in, and whether equal ones are counted together", () => {
    const marks = simulatedMarks(handTable.learner, 30, 0.1, chance(11));
    const twice = marks.map((mark) => ({
      ...mark,
      clean: 2 * mark.clean,
      notYet: 2 * mark.notYet,
    }));
    const one = refit([...marks, ...marks.toReversed()]);
    const other = refit(twice);
    expect(one.hand.start).toBeCloseTo(other.hand.start, 6);
    expect(one.hand.perBit).toBeCloseTo(other.hand.perBit, 6);
    expect(one.startSd).toBeCloseTo(other.startSd, 6);
  });

  test("is quicker where everything was clean, slower where nothing was, and never without time", () => {
    const all = (clean: number, notYet: number): readonly HandMark[] =>
      [90, 150, 240, 330].map((window) => ({
        bits: 3,
        window: milliseconds(window),
        clean,
        notYet,
      }));
    const usual = fiveFrets(handTable.usual);
    expect(fiveFrets(refit(all(9, 0)).hand)).toBeLessThan(usual);
    expect(fiveFrets(refit(all(0, 9)).hand)).toBeGreaterThan(usual);
    const { start, perBit } = refit(all(500, 0)).hand;
    expect(start + perBit).toBeGreaterThan(0);
  });

  test("is hardly moved by one mark that contradicts forty", () => {
    const marks = simulatedMarks(handTable.usual, 40, 0, chance(3));
    const slip: HandMark = { bits: 2.36, window: milliseconds(700), clean: 0, notYet: 1 };
    const before = needOf(refit(marks), FIVE_FRETS);
    const after = needOf(refit([...marks, slip]), FIVE_FRETS);
    expect(Math.abs(after.value - before.value)).toBeLessThan((before.high - before.low) / 4);
  });
});
