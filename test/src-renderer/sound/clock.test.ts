import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Clock } from "../../../src-renderer/sound/clock.ts";
import { bpm, seconds, tick } from "../../../src-shared/units.ts";
import { FakeTime } from "./fakeAudio.ts";

const cutTime = { beats: 2, unit: 2 } as const;
const pace = (tempo: number): { meter: typeof cutTime; tempo: ReturnType<typeof bpm> } => ({
  meter: cutTime,
  tempo: bpm(tempo),
});

/** Changes of tempo, each so many ticks after the one before. */
const anyChanges = fc.array(
  fc.tuple(fc.integer({ min: 1, max: 3000 }), fc.integer({ min: 30, max: 240 })),
  { minLength: 1, maxLength: 12 },
);

const clockWith = (changes: readonly (readonly [number, number])[]): Clock => {
  const clock = new Clock(new FakeTime(3), pace(100));
  clock.start(seconds(3), tick(0), pace(100));
  let at = 0;
  for (const [after, tempo] of changes) {
    at += after;
    clock.changePace(tick(at), pace(tempo));
  }
  return clock;
};

describe("the clock", () => {
  test("a hundred half notes a minute are 1600 ticks a second", () => {
    const clock = clockWith([]);
    expect(clock.tickAt(seconds(4))).toBeCloseTo(1600, 9);
    expect(clock.timeOf(tick(2400))).toBeCloseTo(4.5, 9);
  });

  test("a time's position is at that time, through any changes of tempo", () => {
    fc.assert(
      fc.property(anyChanges, fc.integer({ min: -2000, max: 40_000 }), (changes, at) => {
        const clock = clockWith(changes);
        expect(Math.abs(clock.tickAt(clock.timeOf(tick(at))) - at)).toBeLessThan(1e-6);
      }),
    );
  });

  test("a change of tempo moves nothing before it and makes no leap", () => {
    fc.assert(
      fc.property(anyChanges, fc.integer({ min: 30, max: 240 }), (changes, tempo) => {
        const before = clockWith(changes);
        const after = clockWith(changes);
        const at = changes.reduce((sum, [more]) => sum + more, 0) + 700;
        after.changePace(tick(at), pace(tempo));
        expect(after.timeOf(tick(at))).toBe(before.timeOf(tick(at)));
        expect(after.timeOf(tick(at - 650))).toBe(before.timeOf(tick(at - 650)));
        const step = after.timeOf(tick(at + 1)) - after.timeOf(tick(at));
        expect(step).toBeCloseTo(60 / (tempo * 960), 9);
      }),
    );
  });

  test("the last of two changes at the same place counts", () => {
    const clock = clockWith([]);
    clock.changePace(tick(1600), pace(50));
    clock.changePace(tick(1600), pace(200));
    expect(clock.timeOf(tick(4800))).toBeCloseTo(5, 9);
  });

  test("what is heard lags behind by the output's latency, and never before the start", () => {
    const audio = new FakeTime(5, 0.25);
    const clock = new Clock(audio, pace(100));
    clock.start(seconds(5.1), tick(-1920), pace(100));
    expect(clock.heard()).toBe(-1920);
    audio.time = 6.35;
    expect(clock.heard()).toBeCloseTo(-1920 + 1600, 6);
  });

  test("two hundred changes one after another move nothing that is handed out already", () => {
    const audio = new FakeTime(0);
    const clock = new Clock(audio, pace(100));
    clock.start(seconds(0), tick(0), pace(100));
    for (let change = 1; change <= 200; change += 1) {
      const horizon = tick(Math.ceil(clock.tickAt(seconds(audio.time + 0.2))));
      const ahead = clock.timeOf(horizon);
      clock.changePace(horizon, pace(60 + (change % 90)));
      expect(clock.timeOf(horizon)).toBe(ahead);
      audio.time += 0.31;
    }
  });
});
