import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  secondsPerTick,
  secondsToTicks,
  ticksPerBar,
  ticksPerBeat,
  ticksToSeconds,
} from "../../../src-shared/score/tempo.ts";
import { bpm, seconds, TICKS_PER_EIGHTH, tick } from "../../../src-shared/units.ts";

const cutTime = { beats: 2, unit: 2 } as const;
const common = { beats: 4, unit: 4 } as const;
const waltz = { beats: 3, unit: 4 } as const;
const eighth = tick(TICKS_PER_EIGHTH);

const anyMeter = fc.constantFrom(cutTime, common, waltz, { beats: 2, unit: 4 } as const);
const anyTempo = fc.double({ min: 20, max: 320, noNaN: true }).map(bpm);

describe("tempo", () => {
  // Cut time, eighth = 60 / (4 x half notes a minute) s, rounded to 0.1 ms: the arithmetic of the
  // metronome mark, tabulated; no published table.
  test.each([
    [60, 250.0],
    [70, 214.3],
    [80, 187.5],
    [90, 166.7],
    [100, 150.0],
    [110, 136.4],
    [120, 125.0],
    [130, 115.4],
    [140, 107.1],
    [160, 93.8],
  ])("an eighth in cut time at %d half notes a minute lasts %d ms", (tempo, milliseconds) => {
    expect(Math.round(10_000 * ticksToSeconds(eighth, cutTime, bpm(tempo))) / 10).toBe(
      milliseconds,
    );
  });

  // Likewise in 3/4 with quarters a minute: 30 / tempo s.
  test.each([
    [100, 300.0],
    [120, 250.0],
    [140, 214.3],
  ])("an eighth in 3/4 at %d quarters a minute lasts %d ms", (tempo, milliseconds) => {
    expect(Math.round(10_000 * ticksToSeconds(eighth, waltz, bpm(tempo))) / 10).toBe(milliseconds);
  });

  // Standard MIDI File: 100 half notes a minute are 300,000 microseconds a quarter.
  test("a hundred half notes a minute go as fast as two hundred quarters", () => {
    expect(secondsPerTick(cutTime, bpm(100))).toBe(secondsPerTick(common, bpm(200)));
    expect(1e6 * ticksToSeconds(tick(480), cutTime, bpm(100))).toBeCloseTo(300_000, 6);
  });

  test("a bar holds its beats", () => {
    expect(ticksPerBeat(cutTime)).toBe(960);
    expect([cutTime, common, waltz].map(ticksPerBar)).toEqual([1920, 1920, 1440]);
  });

  test("ticks become seconds and the same ticks again, before the start as well", () => {
    fc.assert(
      fc.property(
        anyMeter,
        anyTempo,
        fc.integer({ min: -1e6, max: 1e7 }),
        (meter, tempo, count) => {
          const back = secondsToTicks(ticksToSeconds(tick(count), meter, tempo), meter, tempo);
          expect(Math.abs(back - count)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  test("seconds add up: two stretches last as long as both together", () => {
    const length = fc.integer({ min: 0, max: 1e6 });
    fc.assert(
      fc.property(anyMeter, anyTempo, length, length, (meter, tempo, a, b) => {
        const [one, two, both] = [a, b, a + b].map((each) =>
          ticksToSeconds(tick(each), meter, tempo),
        );
        expect(Math.abs((one ?? 0) + (two ?? 0) - (both ?? seconds(-1)))).toBeLessThan(1e-8);
      }),
    );
  });

  test.each([0, -90, Number.NaN, Number.POSITIVE_INFINITY])("a tempo of %d is refused", (tempo) => {
    expect(() => secondsPerTick(common, bpm(tempo))).toThrow(RangeError);
  });
});
