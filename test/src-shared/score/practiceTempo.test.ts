import { expect, test } from "vitest";
import type { Meter } from "../../../src-shared/chart/song.ts";
import { practiceRange, steppedTempo } from "../../../src-shared/score/practiceTempo.ts";
import { bpm } from "../../../src-shared/units.ts";

// Quarters in one beat: a half note is two, a dotted quarter one and a half.
const meters: readonly (readonly [Meter, number])[] = [
  [{ beats: 4, unit: 4 }, 1],
  [{ beats: 3, unit: 4 }, 1],
  [{ beats: 2, unit: 4 }, 1],
  [{ beats: 2, unit: 2 }, 2],
  [{ beats: 6, unit: 8 }, 1.5],
];

test("every meter is practised from 30 to 320 quarters a minute, give or take half a beat", () => {
  for (const [meter, quarters] of meters) {
    const { low, high } = practiceRange(meter, bpm(100));
    expect(low * quarters).toBeGreaterThanOrEqual(30);
    expect((high - 0.5) * quarters).toBeLessThanOrEqual(320);
    expect(low * quarters).toBeLessThanOrEqual(30);
    expect(Math.ceil((high + 0.5) * quarters)).toBeGreaterThanOrEqual(320);
    expect(low).toBeGreaterThanOrEqual(15);
    expect(high).toBeLessThanOrEqual(320);
  }
});

test("a chart's own tempo and a fifth above it are within the range, as far as tempos are kept", () => {
  for (const [meter] of meters) {
    for (const own of [20, 100, 250, 320]) {
      const { low, high } = practiceRange(meter, bpm(own));
      expect(low).toBeLessThanOrEqual(own);
      expect(high).toBeGreaterThanOrEqual(Math.min(320, own * 1.2));
    }
  }
});

test("steps of 5 % down from a tempo and up again come back to it", () => {
  const down = [1, 2, 3].reduce((tempo) => Math.round(steppedTempo(tempo, 110, -1)), 110);
  expect(down).toBe(94);
  const up = [1, 2, 3].reduce((tempo) => Math.round(steppedTempo(tempo, 110, 1)), down);
  expect(up).toBe(110);
});
