import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  beatsPerBar,
  eighthNote,
  quartersPerMinute,
  secondsPerTick,
  secondsToTicks,
  tempoOfEighth,
  ticksPerBar,
  ticksPerBeat,
  ticksToSeconds,
} from "../../../src-shared/score/tempo.ts";
import { bpm, seconds, TICKS_PER_EIGHTH, tick } from "../../../src-shared/units.ts";

const cutTime = { beats: 2, unit: 2 } as const;
const common = { beats: 4, unit: 4 } as const;
const waltz = { beats: 3, unit: 4 } as const;
const jig = { beats: 6, unit: 8 } as const;
const eighth = tick(TICKS_PER_EIGHTH);

const anyMeter = fc.constantFrom(cutTime, common, waltz, jig, { beats: 2, unit: 4 } as const);
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

  // Standard MIDI File 1.1 counts microseconds to a quarter, MusicXML 4.0's sound element quarters
  // a minute, whatever the signature: 120 dotted quarters are 180 quarters, 333,333 microseconds.
  test("a tempo of dotted quarters goes half as fast again in quarters", () => {
    expect(quartersPerMinute(jig, bpm(120))).toBe(180);
    expect(secondsPerTick(jig, bpm(120))).toBe(secondsPerTick(common, bpm(180)));
    expect(Math.round(1e6 * ticksToSeconds(tick(480), jig, bpm(120)))).toBe(333_333);
    expect([cutTime, common, waltz].map((meter) => quartersPerMinute(meter, bpm(90)))).toEqual([
      180, 90, 90,
    ]);
  });

  // 60 / (3 x dotted quarters a minute) s: the arithmetic of the metronome mark, no published table.
  test.each([
    [80, 250.0],
    [100, 200.0],
    [120, 166.7],
  ])("an eighth in 6/8 at %d dotted quarters a minute lasts %d ms", (tempo, milliseconds) => {
    expect(Math.round(10 * eighthNote(jig, bpm(tempo))) / 10).toBe(milliseconds);
    expect(tempoOfEighth(jig, eighthNote(jig, bpm(tempo)))).toBeCloseTo(tempo, 9);
  });

  test("a bar of 9/8 holds three dotted quarters", () => {
    const slip = { beats: 9, unit: 8 } as const;
    expect([ticksPerBeat(slip), ticksPerBar(slip), beatsPerBar(slip)]).toEqual([720, 2160, 3]);
    expect(quartersPerMinute(slip, bpm(120))).toBe(180);
  });

  test("a bar holds its beats", () => {
    expect(ticksPerBeat(cutTime)).toBe(960);
    expect(ticksPerBeat(jig)).toBe(720);
    expect([cutTime, common, waltz, jig].map(ticksPerBar)).toEqual([1920, 1920, 1440, 1440]);
    expect([cutTime, common, waltz, jig].map(beatsPerBar)).toEqual([2, 4, 3, 2]);
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
