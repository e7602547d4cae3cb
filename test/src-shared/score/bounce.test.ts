import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bouncedTick } from "../../../src-shared/score/bounce.ts";
import { tick } from "../../../src-shared/units.ts";

const common = { beats: 4, unit: 4 } as const;
const anyTick = fc.integer({ min: 0, max: 40_000 });
const anyBounce = fc.double({ min: 0, max: 1, noNaN: true });

describe("bounce", () => {
  test("puts the off-beat eighth from the middle of the quarter to its third triplet", () => {
    expect([0, 0.5, 1].map((bounce) => bouncedTick(tick(240), bounce, common))).toEqual([
      240, 280, 320,
    ]);
    expect(bouncedTick(tick(960 + 240), 1, common)).toBe(960 + 320);
  });

  test("leaves every quarter, and all of 6/8, in place", () => {
    fc.assert(
      fc.property(anyTick, anyBounce, (at, bounce) => {
        expect(bouncedTick(tick(480 * at), bounce, common)).toBe(480 * at);
        expect(bouncedTick(tick(at), bounce, { beats: 6, unit: 8 })).toBe(at);
      }),
    );
    expect.hasAssertions();
  });

  test("keeps whatever comes first first, in whole ticks, and is nothing at 0", () => {
    fc.assert(
      fc.property(anyTick, anyTick, anyBounce, (one, other, bounce) => {
        const [first, second] = [Math.min(one, other), Math.max(one, other)];
        const heard = bouncedTick(tick(first), bounce, common);
        expect(heard).toBeLessThanOrEqual(bouncedTick(tick(second), bounce, common));
        expect(Number.isInteger(heard)).toBe(true);
        expect(bouncedTick(tick(one), 0, common)).toBe(one);
      }),
    );
    expect.hasAssertions();
  });
});
