import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  compose,
  type Material,
  tempoOfStage,
  type Work,
} from "../../../src-shared/practice/compose.ts";
import { itemId } from "../../../src-shared/practice/itemId.ts";
import type { Minutes, SessionPlan, SessionStep } from "../../../src-shared/practice/practice.ts";
import { stages } from "../../../src-shared/practice/standing.ts";
import { bpm } from "../../../src-shared/units.ts";

const anyTempo = fc.integer({ min: 15, max: 320 }).map(bpm);

const anyWork: fc.Arbitrary<Work> = fc.record({
  item: fc
    .integer({ min: 0, max: 30 })
    .map((bar) => ({ kind: "passage" as const, firstBar: bar, lastBar: bar + 1 })),
  stage: fc.constantFrom(...stages),
  tempo: fc.option(anyTempo),
});

const works = fc.uniqueArray(anyWork, { maxLength: 30, selector: ({ item }) => itemId(item) });

const anyMaterial: fc.Arbitrary<Material> = fc.record({
  minutes: fc.constantFrom<Minutes>(10, 20, 30),
  seed: fc.integer({ min: 0, max: 1_000_000 }),
  goal: anyTempo,
  songTempo: anyTempo,
  trouble: works,
  due: works,
});

type Play = Extract<SessionStep, { readonly kind: "play" }>;
const playsOf = ({ steps }: SessionPlan): readonly Play[] =>
  steps.flatMap((step) => (step.kind === "play" ? [step] : []));

const timesIn = (plan: SessionPlan): ReadonlyMap<string, number> => {
  const times = new Map<string, number>();
  for (const { item } of playsOf(plan)) {
    times.set(itemId(item), (times.get(itemId(item)) ?? 0) + 1);
  }
  return times;
};

const work = (bar: number): Work => ({
  item: { kind: "passage", firstBar: bar, lastBar: bar },
  stage: "slide",
  tempo: null,
});

const materialWith = (part: Partial<Material>): Material => ({
  minutes: 10,
  seed: 5,
  goal: bpm(110),
  songTempo: bpm(80),
  trouble: [],
  due: [],
  ...part,
});

describe("every guided rehearsal", () => {
  test("lasts exactly as long as asked, in whole seconds", () => {
    fc.assert(
      fc.property(anyMaterial, (material) => {
        const { steps } = compose(material);
        expect(steps.every(({ lasts }) => Number.isInteger(lasts) && lasts > 0)).toBe(true);
        expect(steps.reduce((sum, { lasts }) => sum + lasts, 0)).toBe(60 * material.minutes);
      }),
    );
  });

  test("is never above the goal, nor begins above where it leads", () => {
    fc.assert(
      fc.property(anyMaterial, (material) => {
        for (const { start, goal } of playsOf(compose(material))) {
          expect(start).toBeGreaterThan(0);
          expect(start).toBeLessThanOrEqual(goal);
          expect(goal).toBeLessThanOrEqual(material.goal);
        }
      }),
    );
  });

  test("lets nothing starve: what is in it comes twice, the most overdue and the hardest are in it", () => {
    fc.assert(
      fc.property(anyMaterial, (material) => {
        const times = timesIn(compose(material));
        for (const [item, count] of times) {
          if (item !== "song") expect(count).toBeGreaterThanOrEqual(2);
        }
        expect(times.has("song")).toBe(true);
        for (const first of [material.due[0], material.trouble[0]]) {
          if (first) expect(times.has(itemId(first.item))).toBe(true);
        }
      }),
    );
  });

  test("shares its blocks out evenly", () => {
    fc.assert(
      fc.property(anyMaterial, (material) => {
        const counts = [...timesIn(compose(material))].flatMap(([item, count]) =>
          item === "song" ? [] : [count],
        );
        expect(Math.max(0, ...counts) - Math.min(...counts, Infinity)).toBeLessThanOrEqual(1);
      }),
    );
  });

  test("never has one item twice running where there are two, nor more than twice but for the song", () => {
    fc.assert(
      fc.property(anyMaterial, (material) => {
        const ids = playsOf(compose(material)).map(({ item }) => itemId(item));
        const drills = new Set(ids.filter((id) => id !== "song"));
        const most = drills.size > 1 ? 1 : drills.size === 1 ? 2 : ids.length;
        for (let at = 0; at + most < ids.length; at += 1) {
          expect(new Set(ids.slice(at, at + most + 1)).size).toBeGreaterThan(1);
        }
      }),
    );
  });

  test("lets the hands rest before they have played for more than five minutes", () => {
    fc.assert(
      fc.property(anyMaterial, (material) => {
        let running = 0;
        for (const step of compose(material).steps) {
          running = step.kind === "rest" ? 0 : running + step.lasts;
          expect(running).toBeLessThanOrEqual(300);
        }
      }),
    );
  });

  test("is the same for the same material, and goes one stage on each time an item comes again", () => {
    fc.assert(
      fc.property(anyMaterial, (material) => {
        const plan = compose(material);
        expect(compose(material)).toEqual(plan);
        const last = new Map<string, number>();
        for (const { item, stage, why } of playsOf(plan)) {
          if (why === "song") continue;
          const before = last.get(itemId(item));
          const here = stages.indexOf(stage);
          if (before !== undefined) expect(here).toBe(Math.min(before + 1, stages.length - 1));
          last.set(itemId(item), here);
        }
      }),
    );
  });
});

describe("a guided rehearsal", () => {
  test("of ten minutes takes the three that need it most, then rests, and ends with the song", () => {
    const plan = compose(materialWith({ trouble: [work(0), work(3), work(6), work(9), work(12)] }));
    expect([...timesIn(plan).keys()].toSorted()).toEqual([
      "bars 0-0",
      "bars 3-3",
      "bars 6-6",
      "song",
    ]);
    expect(plan.steps.map(({ kind }) => kind).join(" ")).toBe(
      "play play play play rest play play play play",
    );
    const last = playsOf(plan).at(-1);
    expect(last).toMatchObject({ item: { kind: "song" }, start: 80, goal: 80, lasts: 120 });
  });

  test("puts what is due beside what is hard, and knows what is both only once", () => {
    const plan = compose(materialWith({ trouble: [work(1), work(4)], due: [work(4), work(8)] }));
    const why = new Map(playsOf(plan).map((step) => [itemId(step.item), step.why]));
    expect(Object.fromEntries(why)).toEqual({
      "bars 1-1": "trouble",
      "bars 4-4": "due",
      "bars 8-8": "due",
      song: "song",
    });
  });

  test("of a song in which nothing moves is the song, with its rest", () => {
    const plan = compose(materialWith({}));
    expect([...timesIn(plan).keys()]).toEqual(["song"]);
    expect(plan.steps.filter(({ kind }) => kind === "rest")).toHaveLength(1);
  });

  test("comes in another order with another seed", () => {
    const trouble = [0, 2, 4, 6, 8].map(work);
    const orders = new Set(
      Array.from({ length: 12 }, (_, seed) =>
        playsOf(compose(materialWith({ minutes: 20, seed, trouble })))
          .map(({ item }) => itemId(item))
          .join(),
      ),
    );
    expect(orders.size).toBeGreaterThan(6);
  });
});

describe("the tempo of a stage", () => {
  test("of a very slow goal stays within it", () => {
    for (const stage of stages) {
      const { start, goal } = tempoOfStage(stage, bpm(1), bpm(400));
      expect([start, goal]).toEqual([1, 1]);
    }
  });
});
