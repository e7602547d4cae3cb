import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  barAt,
  barsWithin,
  chunkAt,
  chunkStart,
  stretchesWithin,
} from "../../../src-renderer/geometry/visible.ts";
import type { TimedBar } from "../../../src-shared/chart/song.ts";
import { tick } from "../../../src-shared/units.ts";

const barsOf = (count: number, length: number): readonly TimedBar[] =>
  Array.from({ length: count }, (_, index) => ({
    index,
    start: tick(index * length),
    length: tick(length),
    section: null,
    startsSection: false,
    written: index,
  }));

describe("the bar that a tick lies in", () => {
  test("is the one that a walk through all bars finds", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 90 }),
        fc.integer({ min: -999, max: 99_999 }),
        (n, at) => {
          const bars = barsOf(n, 1440);
          const walked = Math.max(
            0,
            bars.findLastIndex((bar) => bar.start <= at),
          );
          expect(barAt(bars, at)).toBe(walked);
        },
      ),
    );
  });
});

test("a tick lies in the chunk that starts at or before it, and before the next", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -20_000, max: 900_000 }),
      fc.constantFrom(1440, 1920),
      (at, bar) => {
        const chunk = chunkAt(at, bar);
        expect(chunkStart(chunk, bar)).toBeLessThanOrEqual(at);
        expect(chunkStart(chunk + 1, bar)).toBeGreaterThan(at);
      },
    ),
  );
});

describe("the bars within a stretch of time", () => {
  test("are those of which a walk through all bars finds some part in it", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 120 }),
        fc.integer({ min: -9000, max: 120 * 1920 }),
        fc.integer({ min: 1, max: 20_000 }),
        (n, from, length) => {
          const bars = barsOf(n, 1920);
          const shown = barsWithin(bars, from, from + length);
          const walked = bars.filter(
            (bar) => bar.start + bar.length > from && bar.start < from + length,
          );
          expect(bars.slice(shown.first, shown.end)).toEqual(walked);
          if (walked.length > 0) {
            const last = walked.at(-1);
            expect([shown.from, shown.to]).toEqual([
              walked[0]?.start,
              (last?.start ?? 0) + (last?.length ?? 0),
            ]);
          }
        },
      ),
    );
  });

  test("are none for a song without bars, before its start and after its end", () => {
    const none = { first: 0, end: 0, from: 0, to: 0 };
    expect(barsWithin([], 0, 100)).toEqual(none);
    expect(barsWithin(barsOf(3, 1920), -500, 0)).toEqual(none);
    expect(barsWithin(barsOf(3, 1920), 5760, 9000)).toEqual(none);
  });
});

test("the stretches within a window are those of which some part lies in it", () => {
  const stretches = [
    { start: 0, length: 960 },
    { start: 960, length: 480 },
    { start: 2400, length: 720 },
  ];
  expect(stretchesWithin(stretches, 959, 961)).toEqual(stretches.slice(0, 2));
  expect(stretchesWithin(stretches, 1440, 2400)).toEqual([]);
  expect(stretchesWithin(stretches, 1439, 2401)).toEqual(stretches.slice(1));
});
