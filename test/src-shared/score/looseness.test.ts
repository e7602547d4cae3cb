import { describe, expect, test } from "vitest";
import {
  LOOSEST_LEVEL,
  LOOSEST_TICKS,
  levelOff,
  type PlayerName,
  ticksOff,
} from "../../../src-shared/score/looseness.ts";
import { TICKS_PER_EIGHTH } from "../../../src-shared/units.ts";

const places = (player: PlayerName) =>
  Array.from({ length: 4000 }, (_, index) => ({
    player,
    bar: Math.floor(index / 8),
    into: (index % 8) * TICKS_PER_EIGHTH,
  }));
const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const deviation = (values: readonly number[]) =>
  Math.sqrt(mean(values.map((value) => (value - mean(values)) ** 2)));

describe("a loose hand", () => {
  test("is within 12 ticks, and neither early nor late on the whole", () => {
    const off = places("banjo").map((place) => ticksOff(place, 1));
    expect(Math.max(...off.map(Math.abs))).toBeLessThanOrEqual(LOOSEST_TICKS);
    // Four thousand draws of deviation 4.9: a mean off by 0.4 would be five standard errors.
    expect(Math.abs(mean(off))).toBeLessThan(0.4);
  });

  test("spreads by 2 % of an eighth, the steady end of 2 to 4 % in tapping (Repp 2005, from memory)", () => {
    for (const player of ["banjo", "bass", "guitar", "chop"] as const) {
      const share = deviation(places(player).map((place) => ticksOff(place, 1))) / TICKS_PER_EIGHTH;
      expect(share, player).toBeGreaterThan(0.018);
      // Friberg and Sundberg 1995: one displaced tone is noticed from 2.5 % of the interval on.
      expect(share, player).toBeLessThan(0.025);
    }
  });

  test("goes with how human it is to be, down to none", () => {
    const [half, whole] = [0.5, 1].map((human) =>
      deviation(places("bass").map((place) => ticksOff(place, human))),
    );
    expect((whole ?? 0) / (half ?? 1)).toBeCloseTo(2, 1);
    expect(places("bass").every((place) => ticksOff(place, 0) === 0)).toBe(true);
  });

  test("is another for each player, and for the next bar", () => {
    const bass = places("bass").map((place) => ticksOff(place, 1));
    const chop = places("chop").map((place) => ticksOff(place, 1));
    const together = mean(bass.map((off, index) => off * (chop[index] ?? 0)));
    // The correlation of two independent rows of 4000 is 0 give or take 0.016.
    expect(Math.abs(together / (deviation(bass) * deviation(chop)))).toBeLessThan(0.08);
    const next = mean(bass.slice(8).map((off, index) => off * (bass[index] ?? 0)));
    expect(Math.abs(next / deviation(bass) ** 2)).toBeLessThan(0.08);
  });

  test("strikes at most 12 % louder or softer, which is about one decibel", () => {
    const levels = places("chop").map((place) => levelOff(place, 1));
    expect(Math.max(...levels)).toBeLessThanOrEqual(1 + LOOSEST_LEVEL);
    expect(Math.min(...levels)).toBeGreaterThanOrEqual(1 - LOOSEST_LEVEL);
    expect(20 * Math.log10(Math.max(...levels))).toBeLessThan(1);
    expect(Math.abs(mean(levels) - 1)).toBeLessThan(0.01);
  });
});
