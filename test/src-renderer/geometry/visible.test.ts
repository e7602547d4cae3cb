import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  barAt,
  CHUNK_BARS,
  chunkAt,
  stretchesWithin,
  windowOf,
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

describe("the window of bars that is drawn", () => {
  test("covers what is on the screen wherever now is within the chunk", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 120 }),
        fc.integer({ min: 0, max: 120 * 1920 }),
        fc.integer({ min: 1, max: 9000 }),
        fc.integer({ min: 1, max: 14_000 }),
        (n, at, behind, ahead) => {
          const bars = barsOf(n, 1920);
          const now = Math.min(at, n * 1920 - 1);
          const shown = windowOf(bars, chunkAt(bars, now), behind, ahead);
          expect(shown.from).toBeLessThanOrEqual(Math.max(0, now - behind));
          expect(shown.to).toBeGreaterThanOrEqual(Math.min(n * 1920, now + ahead));
        },
      ),
    );
  });

  test("stays the same from the first bar of a chunk to its last", () => {
    const bars = barsOf(40, 1920);
    const chunks = [0, 1, 2, 3].map((bar) => chunkAt(bars, (2 * CHUNK_BARS + bar) * 1920 + 7));
    expect(new Set(chunks)).toEqual(new Set([2]));
  });

  test("is a small part of a long song", () => {
    const shown = windowOf(barsOf(2000, 1920), 100, 4000, 9000);
    expect(shown.end - shown.first).toBeLessThan(16);
  });

  test("is empty for a song without bars", () => {
    expect(windowOf([], 0, 100, 100)).toEqual({ first: 0, end: 0, from: 0, to: 0 });
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
