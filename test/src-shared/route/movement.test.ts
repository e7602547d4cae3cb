import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fretDistance } from "../../../src-shared/neck/fretDistance.ts";
import { handTable } from "../../../src-shared/route/handTable.ts";
import { difficultyBits, landingWidth, shiftTime } from "../../../src-shared/route/movement.ts";
import { fret, millimetres } from "../../../src-shared/units.ts";

const scale = millimetres(666.75);
const gap = (a: number, b: number) =>
  millimetres(Math.abs(fretDistance(fret(b), scale) - fretDistance(fret(a), scale)));

describe("the time that a shift needs", () => {
  // Worked from MT = a + b log2(D/W + 1) (Shannon form, MacKenzie 1992, Human-Computer Interaction
  // 7:91-139), W half the fret space at the arrival, L = 666.75 mm; independent computation.
  const worked = [
    { to: 7, bits: 2.356, learner: 307, default: 207, skilled: 118 },
    { to: 10, bits: 3.616, learner: 440, default: 301, skilled: 181 },
    { to: 12, bits: 4.151, learner: 496, default: 341, skilled: 208 },
    { to: 17, bits: 5.114, learner: 597, default: 414, skilled: 256 },
  ] as const;

  for (const row of worked) {
    test(`from fret 5 up to fret ${row.to} is the worked one for each hand`, () => {
      const width = landingWidth(fret(row.to), scale);
      expect(difficultyBits(gap(5, row.to), width)).toBeCloseTo(row.bits, 2);
      for (const name of ["learner", "default", "skilled"] as const) {
        expect(
          Math.abs(shiftTime(handTable[name], gap(5, row.to), width) - row[name]),
        ).toBeLessThan(1);
      }
    });
  }

  test("from frets 7, 10, 12 and 17 down to fret 5 is the worked one: down is easier", () => {
    const width = landingWidth(fret(5), scale);
    const down = [7, 10, 12, 17].map((from) => shiftTime(handTable.default, gap(from, 5), width));
    for (const [index, expected] of [197, 273, 301, 342].entries()) {
      expect(Math.abs((down[index] ?? 0) - expected)).toBeLessThan(1);
    }
  });

  test("follows the Shannon regression of Fitts's own 1954 stylus table", () => {
    // Fitts 1954, 1-oz stylus, ms, A by W inches; regression in Shannon form 27.7 + 111.5 ID,
    // r = .9936 (MacKenzie, PhD thesis, ch. 2, has the table; the fit is computed here).
    const amplitudes = [2, 4, 8, 16];
    const widths = [2, 1, 0.5, 0.25];
    const times = [
      [180, 212, 281, 392],
      [203, 260, 372, 484],
      [279, 357, 469, 580],
      [388, 481, 595, 731],
    ];
    const points = amplitudes.flatMap((amplitude, a) =>
      widths.map((width, w) => ({
        bits: difficultyBits(millimetres(amplitude), millimetres(width)),
        ms: times[a]?.[w] ?? Number.NaN,
      })),
    );
    const mean = (values: readonly number[]) =>
      values.reduce((sum, v) => sum + v, 0) / values.length;
    const meanBits = mean(points.map((p) => p.bits));
    const meanMs = mean(points.map((p) => p.ms));
    const slope =
      points.reduce((sum, p) => sum + (p.bits - meanBits) * (p.ms - meanMs), 0) /
      points.reduce((sum, p) => sum + (p.bits - meanBits) ** 2, 0);
    expect(slope).toBeCloseTo(111.5, 0);
    expect(meanMs - slope * meanBits).toBeCloseTo(27.7, 0);
  });

  test("is none where the hand stays", () => {
    expect(shiftTime(handTable.learner, millimetres(0), millimetres(9))).toBe(0);
  });

  test("rises with distance, falls with width, and does not depend on the scale length", () => {
    const length = fc.double({ min: 1, max: 400, noNaN: true });
    fc.assert(
      fc.property(length, length, length, (distance, more, width) => {
        const time = (d: number, w: number) =>
          shiftTime(handTable.default, millimetres(d), millimetres(w));
        expect(time(distance + more, width)).toBeGreaterThan(time(distance, width));
        expect(time(distance, width + more)).toBeLessThan(time(distance, width));
        expect(time(distance * 3, width * 3)).toBeCloseTo(time(distance, width), 6);
      }),
    );
  });
});
