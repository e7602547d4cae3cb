import { describe, expect, test } from "vitest";
import { fretDistance } from "../../../src-shared/neck/fretDistance.ts";
import { fret, millimetres } from "../../../src-shared/units.ts";
import { printedFrets } from "../../published/fretTable.ts";

describe("fret distances", () => {
  test("agree with a published table for a 25.5 inch scale, in mm", () => {
    // The same page goes on to fret 24.
    for (const [n, distance] of [...printedFrets, [24, 485.78] as const]) {
      expect(fretDistance(fret(n), millimetres(647.7))).toBeCloseTo(distance, 1);
    }
  });

  test("agree with a second published table, in inches", () => {
    // buildyourguitar.com, fret distances for 25.5 in: d1 1.431, d2 2.782.
    expect(fretDistance(fret(1), millimetres(647.7)) / 25.4).toBeCloseTo(1.431, 3);
    expect(fretDistance(fret(2), millimetres(647.7)) / 25.4).toBeCloseTo(2.782, 3);
  });

  test("leave as much to the bridge as a published 25 inch table says", () => {
    // stuphi.co.uk, page 18: fret to bridge, 25 in scale.
    const toBridge = [23.597, 22.272, 21.022, 19.843, 18.729, 17.678, 16.685, 15.749, 14.865];
    for (const [index, inches] of toBridge.entries()) {
      const distance = fretDistance(fret(index + 1), millimetres(635));
      expect((635 - distance) / 25.4).toBeCloseTo(inches, 2);
    }
  });

  test("put the twelfth fret at half the scale and the nut at nothing", () => {
    expect(fretDistance(fret(12), millimetres(666.75))).toBe(333.375);
    expect(fretDistance(fret(0), millimetres(666.75))).toBe(0);
  });
});
