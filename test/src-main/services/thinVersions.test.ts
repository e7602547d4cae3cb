import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type AgedVersion,
  DAILY_MS,
  HOURLY_MS,
  isWorthKeeping,
  MOST_BYTES,
  NEWEST_KEPT,
  versionsToDrop,
} from "../../../src-main/services/thinVersions.ts";

const nowMs = Date.UTC(2026, 10, 25, 17, 30);
const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;

const keptOf = <V extends AgedVersion>(versions: readonly V[], at: number): readonly V[] => {
  const dropped = new Set(versionsToDrop(versions, at));
  return versions.filter((version) => !dropped.has(version));
};

const anyVersions = fc.uniqueArray(
  fc.record({
    savedMs: fc.integer({ min: nowMs - 120 * DAY_MS, max: nowMs }),
    bytes: fc.integer({ min: 1, max: 1_500_000 }),
  }),
  { selector: ({ savedMs }) => savedMs, maxLength: 200 },
);
const small = (savedMs: number): AgedVersion => ({ savedMs, bytes: 700 });

describe("the ring of earlier versions", () => {
  test("never takes more room than it may, and always keeps the newest", () => {
    fc.assert(
      fc.property(anyVersions, (versions) => {
        const kept = keptOf(versions, nowMs);
        expect(kept.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(MOST_BYTES);
        const newest = Math.max(...versions.map(({ savedMs }) => savedMs));
        expect(kept.some(({ savedMs }) => savedMs === newest)).toBe(versions.length > 0);
      }),
    );
  });

  test("thinned again at the same time stays as it is", () => {
    fc.assert(
      fc.property(anyVersions, (versions) => {
        const kept = keptOf(versions, nowMs);
        expect(versionsToDrop(kept, nowMs)).toEqual([]);
      }),
    );
  });

  test("keeps the last of every hour of two days and of every day of ninety", () => {
    const everyTenMinutes = Array.from({ length: 6 * 24 * 100 }, (_, index) =>
      small(nowMs - index * 10 * MINUTE_MS),
    );
    const kept = keptOf(everyTenMinutes, nowMs).toSorted((a, b) => b.savedMs - a.savedMs);
    expect(kept.slice(0, NEWEST_KEPT)).toEqual(everyTenMinutes.slice(0, NEWEST_KEPT));
    const later = kept.slice(NEWEST_KEPT);
    const hourly = later.filter(({ savedMs }) => nowMs - savedMs < HOURLY_MS);
    expect(hourly).toHaveLength(47);
    expect(new Set(hourly.map(({ savedMs }) => Math.floor(savedMs / HOUR_MS))).size).toBe(47);
    expect(hourly.every(({ savedMs }) => savedMs % HOUR_MS === 50 * MINUTE_MS)).toBe(true);
    const daily = later.filter(({ savedMs }) => nowMs - savedMs >= HOURLY_MS);
    expect(new Set(daily.map(({ savedMs }) => Math.floor(savedMs / DAY_MS))).size).toBe(
      daily.length,
    );
    expect(daily.every(({ savedMs }) => nowMs - savedMs < DAILY_MS)).toBe(true);
    expect([88, 89, 90]).toContain(daily.length);
  });

  test("saved into for a year as by a player who writes an hour a day stays bounded", () => {
    let kept: readonly AgedVersion[] = [];
    for (let day = 0; day < 365; day += 1) {
      for (let minute = 0; minute < 60; minute += 5) {
        const at = nowMs + day * DAY_MS + minute * MINUTE_MS;
        kept = keptOf([...kept, small(at)], at);
      }
      expect(kept.length).toBeLessThanOrEqual(NEWEST_KEPT + 48 + 90);
    }
    expect(kept.length).toBeGreaterThan(90);
  });

  test("takes the first one, what stood for a minute, and one a minute of what did not", () => {
    expect(isWorthKeeping(nowMs - 400, null, nowMs)).toBe(true);
    expect(isWorthKeeping(nowMs - 61_000, nowMs - 62_000, nowMs)).toBe(true);
    expect(isWorthKeeping(nowMs - 700, nowMs - 30_000, nowMs)).toBe(false);
    expect(isWorthKeeping(nowMs - 700, nowMs - 61_000, nowMs)).toBe(true);
  });
});
