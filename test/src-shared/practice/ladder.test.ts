import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cleanMissing,
  climb,
  type Ladder,
  type LadderEvent,
  type LadderPlan,
  ladderOf,
  usualLadder,
} from "../../../src-shared/practice/ladder.ts";
import type { Mark } from "../../../src-shared/practice/practice.ts";
import { bpm } from "../../../src-shared/units.ts";

const anyPlan: fc.Arbitrary<LadderPlan> = fc
  .record({
    start: fc.integer({ min: 20, max: 260 }).map(bpm),
    goal: fc.integer({ min: 40, max: 220 }).map(bpm),
    floor: fc.integer({ min: 15, max: 120 }).map(bpm),
    step: fc.integer({ min: 1, max: 30 }),
    rounds: fc.integer({ min: 1, max: 6 }),
    back: fc.integer({ min: 0, max: 3 }),
    by: fc.constantFrom<LadderPlan["by"]>("marks", "rounds"),
  })
  .chain((plan) => fc.integer({ min: 1, max: plan.rounds }).map((clean) => ({ ...plan, clean })));

const anyEvent: fc.Arbitrary<LadderEvent> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.record({
      kind: fc.constant("round" as const),
      mark: fc.constantFrom<Mark | null>("clean", "not-yet", null),
    }),
  },
  { weight: 1, arbitrary: fc.constant<LadderEvent>({ kind: "pause" }) },
  { weight: 1, arbitrary: fc.constant<LadderEvent>({ kind: "resume" }) },
);

const run = (plan: LadderPlan, events: readonly LadderEvent[]): readonly Ladder[] => {
  const all = [ladderOf(plan)];
  for (const event of events) {
    const last = all.at(-1);
    if (last) all.push(climb(last, event));
  }
  return all;
};

const marked = (...marks: readonly (Mark | null)[]): readonly LadderEvent[] =>
  marks.map((mark) => ({ kind: "round", mark }));

const plain: LadderPlan = { ...usualLadder(bpm(60), bpm(75)), step: 6, floor: bpm(50) };

describe("every ladder", () => {
  test("stays between its floor and its goal, and moves by its steps alone", () => {
    fc.assert(
      fc.property(anyPlan, fc.array(anyEvent, { maxLength: 60 }), (plan, events) => {
        const all = run(plan, events);
        for (const [index, { tempo }] of all.entries()) {
          expect(tempo).toBeLessThanOrEqual(plan.goal);
          expect(tempo).toBeGreaterThanOrEqual(Math.min(plan.floor, plan.goal));
          const before = all[index - 1]?.tempo ?? tempo;
          expect(tempo - before).toBeLessThanOrEqual(plan.step);
          expect(before - tempo).toBeLessThanOrEqual(plan.back * plan.step);
        }
      }),
    );
  });

  test("goes by itself to the goal when every round is clean, and says that it is done", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const climbs = Math.ceil(plan.goal / plan.step) + 1;
        const events = marked(
          ...Array.from({ length: climbs * plan.clean }, () => "clean" as const),
        );
        const last = run(plan, events).at(-1);
        expect(last?.tempo).toBe(plan.goal);
        expect(last?.done).toBe(true);
      }),
    );
  });

  test("never climbs on misses, and stands as it was while it is paused", () => {
    fc.assert(
      fc.property(anyPlan, fc.array(anyEvent, { maxLength: 40 }), (plan, events) => {
        const misses = run(plan, marked(...events.map(() => "not-yet" as const)));
        expect(
          misses.every(({ tempo }, index) => tempo <= (misses[index - 1]?.tempo ?? tempo)),
        ).toBe(true);
        const before = run(plan, events).at(-1);
        if (!before) return;
        const paused = climb(before, { kind: "pause" });
        const during = events
          .filter(({ kind }) => kind === "round")
          .reduce((ladder, event) => climb(ladder, event), paused);
        expect(climb(during, { kind: "resume" })).toEqual({ ...before, paused: false });
      }),
    );
  });

  // The rule in plain words, kept by looking back over all rounds at this tempo.
  test("steps where a plain count of the last rounds says so", () => {
    fc.assert(
      fc.property(
        anyPlan.map((plan) => ({ ...plan, by: "marks" as const })),
        fc.array(fc.constantFrom<Mark>("clean", "not-yet"), { maxLength: 60 }),
        (plan, marks) => {
          let tempo = Math.min(plan.goal, Math.max(plan.start, Math.min(plan.floor, plan.goal)));
          let here: readonly Mark[] = [];
          for (const mark of marks) {
            here = [...here, mark];
            const look = here.slice(Math.max(0, here.length - plan.rounds));
            const count = look.filter((each) => each === "clean").length;
            const canStill = count + (plan.rounds - look.length) >= plan.clean;
            if (count >= plan.clean) tempo = Math.min(plan.goal, tempo + plan.step);
            else if (!canStill) {
              tempo = Math.max(Math.min(plan.floor, plan.goal), tempo - plan.back * plan.step);
            }
            if (count >= plan.clean || !canStill) here = [];
          }
          expect(run(plan, marked(...marks)).at(-1)?.tempo).toBe(tempo);
        },
      ),
    );
  });
});

describe("the usual ladder", () => {
  test("goes up after three clean of the last four, one miss among them or none", () => {
    expect(run(plain, marked("clean", "clean", "clean")).map(({ tempo }) => tempo)).toEqual([
      60, 60, 60, 66,
    ]);
    expect(run(plain, marked("clean", "not-yet", "clean", "clean")).at(-1)?.tempo).toBe(66);
  });

  test("goes back one step after two misses, and no further than its floor", () => {
    const misses = run(
      plain,
      marked("not-yet", "not-yet", "not-yet", "not-yet", "not-yet", "not-yet"),
    );
    expect(misses.map(({ tempo }) => tempo)).toEqual([60, 60, 54, 54, 50, 50, 50]);
  });

  test("takes the last step to the goal itself, not past it", () => {
    const nine = marked(...Array.from({ length: 9 }, () => "clean" as const));
    expect(run(plain, nine).at(-1)?.tempo).toBe(75);
    expect(run(plain, nine).at(-1)?.done).toBe(false);
  });

  test("counts a round without a mark only where rounds decide", () => {
    expect(run(plain, marked(null, null, null)).at(-1)?.tempo).toBe(60);
    expect(run({ ...plain, by: "rounds" }, marked(null, null, null)).at(-1)?.tempo).toBe(66);
  });

  test("says how many clean rounds are missing", () => {
    expect(run(plain, marked("clean", "not-yet")).map(cleanMissing)).toEqual([3, 2, 2]);
  });
});
