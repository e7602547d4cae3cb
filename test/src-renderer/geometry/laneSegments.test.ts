import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { laneSegments } from "../../../src-renderer/geometry/laneSegments.ts";
import { lookLimits } from "../../../src-renderer/geometry/lookLimits.ts";
import type { TimedBar } from "../../../src-shared/chart/song.ts";
import { songTickAt } from "../../../src-shared/score/loop.ts";
import { tick } from "../../../src-shared/units.ts";

const BAR = 1920;
const barsOf = (count: number): readonly TimedBar[] =>
  Array.from({ length: count }, (_, index) => ({
    index,
    start: tick(index * BAR),
    length: tick(BAR),
    section: null,
    startsSection: false,
    written: index,
  }));
const loopOf = (first: number, last: number) => ({
  start: tick(first * BAR),
  end: tick((last + 1) * BAR),
});

describe("what the lanes show", () => {
  test("is the song alone where nothing loops, however far it is looked for", () => {
    expect(laneSegments(barsOf(4), -3000, 30_000, null)).toEqual([
      { round: 0, shown: { first: 0, end: 4, from: 0, to: 4 * BAR }, offset: 0 },
    ]);
  });

  test("is the loop again after its end, as often as there is room", () => {
    const shown = laneSegments(barsOf(12), 3 * BAR, 9 * BAR, loopOf(4, 5));
    expect(
      shown.map(({ round, shown: { first, end }, offset }) => [round, first, end, offset]),
    ).toEqual([
      [0, 3, 6, 0],
      [1, 4, 6, 2 * BAR],
      [2, 4, 5, 4 * BAR],
    ]);
  });

  test("is what will be heard there, at every tick on the axis", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20 }),
        fc.nat(19),
        fc.nat(19),
        fc.integer({ min: 0, max: 19 * BAR }),
        fc.integer({ min: 1, max: 12 * BAR }),
        fc.nat(12 * BAR),
        (count, a, b, from, length, probe) => {
          const bars = barsOf(count);
          const [first, last] = [Math.min(a, b) % count, Math.max(a, b) % count];
          const loop = loopOf(Math.min(first, last), Math.max(first, last));
          const at = from + (probe % length);
          const run = { start: tick(0), loop, end: tick(count * BAR), countIn: tick(0) };
          const heard = songTickAt(run, tick(at));
          const covering = laneSegments(bars, from, from + length, loop).filter(
            ({ shown, offset }) => shown.from + offset <= at && at < shown.to + offset,
          );
          expect(covering.map(({ offset }) => at - offset)).toEqual([heard]);
        },
      ),
    );
  });
});

describe("a look along the lanes", () => {
  test("goes from the song's start to its end", () => {
    expect(lookLimits(500, 9000, null)).toEqual({ low: -500, high: 8500 });
  });

  test("goes to the end of a loop's next round", () => {
    expect(lookLimits(2000, 90_000, loopOf(1, 2))).toEqual({ low: -2000, high: 5 * BAR - 2000 });
  });

  test("goes nowhere back in the count-in, and never past the end", () => {
    expect(lookLimits(-700, 9000, null)).toEqual({ low: 0, high: 9700 });
    expect(lookLimits(9500, 9000, null)).toEqual({ low: -9500, high: 0 });
  });
});
