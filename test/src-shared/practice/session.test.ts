import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SessionPlan } from "../../../src-shared/practice/practice.ts";
import {
  advance,
  type Session,
  type SessionEvent,
  secondsLeft,
  sessionOf,
  stepNext,
  stepNow,
} from "../../../src-shared/practice/session.ts";
import { bpm } from "../../../src-shared/units.ts";

const plan: SessionPlan = {
  minutes: 10,
  steps: [
    {
      kind: "play",
      item: { kind: "passage", firstBar: 2, lastBar: 3 },
      stage: "slow",
      why: "trouble",
      start: bpm(50),
      goal: bpm(100),
      lasts: 70,
    },
    { kind: "rest", lasts: 40 },
    {
      kind: "play",
      item: { kind: "song" },
      stage: "song",
      why: "song",
      start: bpm(80),
      goal: bpm(80),
      lasts: 490,
    },
  ],
};

const having = (events: readonly SessionEvent[]): Session =>
  events.reduce((session, event) => advance(session, event), sessionOf(plan));
const time = (seconds: number): SessionEvent => ({ kind: "time", seconds });
const clean: SessionEvent = { kind: "round", mark: "clean" };

describe("a guided rehearsal that is under way", () => {
  test("goes from step to step with the time, whatever pieces it comes in", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 90 }), { maxLength: 30 }), (pieces) => {
        const gone = pieces.reduce((sum, each) => sum + each, 0);
        const session = having(pieces.map(time));
        const ends = [70, 110, 600];
        const at = ends.findIndex((end) => gone < end);
        expect(session.at).toBe(at < 0 ? 3 : at);
        expect(secondsLeft(session).all).toBe(Math.max(0, 600 - gone));
      }),
    );
  });

  test("says what is left, what is played and what comes", () => {
    const session = having([time(30), time(55)]);
    expect(stepNow(session)).toEqual(plan.steps[1]);
    expect(stepNext(session)).toEqual(plan.steps[2]);
    expect(secondsLeft(session)).toEqual({ step: 25, all: 515 });
  });

  test("climbs with clean rounds, and begins the next step at its own tempo", () => {
    expect(having([clean, clean, clean]).ladder?.tempo).toBe(54);
    expect(having([clean, clean, clean, time(70)]).ladder).toBeNull();
    expect(having([clean, clean, clean, time(110)]).ladder?.tempo).toBe(80);
  });

  test("stands still while it is paused, and goes on where it was", () => {
    const paused = having([time(10), { kind: "pause" }, time(100), clean, clean, clean]);
    expect([paused.at, paused.spent, paused.ladder?.tempo]).toEqual([0, 10, 50]);
    expect(advance(advance(paused, { kind: "resume" }), time(5)).spent).toBe(15);
  });

  test("skips to the next step, and is over after the last", () => {
    const over = having([{ kind: "skip" }, { kind: "skip" }, { kind: "skip" }, { kind: "skip" }]);
    expect(stepNow(over)).toBeNull();
    expect(secondsLeft(over)).toEqual({ step: 0, all: 0 });
    expect(advance(over, time(9))).toEqual(over);
  });
});
