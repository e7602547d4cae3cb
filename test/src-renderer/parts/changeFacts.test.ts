import { describe, expect, test } from "vitest";
import { changeFacts } from "../../../src-renderer/parts/changeFacts.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { type PlanSettings, wholeNeckPlan } from "../../../src-shared/settings.ts";

const BAR = 1920;
const factsOf = (bars: string, tempo: number, plan: Partial<PlanSettings> = {}) => {
  const text = `Title: Sluice\nKey: G\nTime: 4/4\n${bars}\n`;
  const settings = { ...wholeNeckPlan, fretHigh: 17, ...plan };
  const walk = chartToScore(text, settings, tempo);
  const steady = chartToScore(text, { ...settings, aim: "steady" }, tempo).route;
  if (!walk.route) throw new Error("no route");
  return changeFacts(walk.route, walk.timeline.bars, walk.timeline.meter, walk.neck.tuning, steady);
};

describe("the list of changes", () => {
  const dOnly = { shapes: ["D"], goesRound: true } as const;

  // D shape: index finger at 7 for G, 12 for C, 14 for D (common practice, no published source).
  test("has every change in order, with its bar, chords, way and figures", () => {
    const facts = factsOf("| G | G | C | D | G C |", 100, dOnly);
    expect(facts.map(({ bar, chords, says }) => [bar, chords, says])).toEqual([
      ["Bar 3", "G to C", "Up 5 to the D shape"],
      ["Bar 4", "C to D", "Up 2 to the D shape"],
      ["Bar 5", "D to G", "Down 7 to the D shape"],
      ["Bar 5", "G to C", "Up 5 to the D shape"],
      ["Bar 1", "C to G, back to the start", "Down 5 to the D shape"],
    ]);
    for (const { way, need, ceiling, tooFast, remedy } of facts) {
      expect(["Keep every note", "Let the last note go", "Let two notes go"]).toContain(way);
      expect(need).toMatch(/^needs \d+ of \d+\u00a0ms$/);
      expect(Number(ceiling?.replace("up to ", ""))).toBeGreaterThanOrEqual(100);
      expect([tooFast, remedy]).toEqual([false, null]);
    }
  });

  test("starts a bar before each change, and the one back to the start in the last bar", () => {
    const starts = factsOf("| G | G | C | D | G C |", 100, dOnly).map(({ from }) => from / BAR);
    expect(starts).toEqual([1, 2, 3, 3, 4]);
  });

  test("has no figures for a change where nothing moves", () => {
    const facts = factsOf("| G | C | G |", 100, dOnly);
    expect(facts.at(-1)).toMatchObject({
      says: "Stay in the D shape",
      way: "Hold",
      need: null,
      ceiling: null,
    });
  });

  test("says how far to slow down where no aim makes a change in time", () => {
    const late = factsOf("| G | C | D | G |", 320, { ...dOnly, hand: "learner" }).filter(
      ({ tooFast }) => tooFast,
    );
    expect(late.length).toBeGreaterThan(0);
    for (const { way, ceiling, remedy } of late) {
      expect(way).toBe("Too fast");
      const slower = Number(ceiling?.replace("up to ", ""));
      expect(slower).toBeLessThan(320);
      expect(remedy).toBe(`Slow down to ${slower}.`);
    }
  });

  test("names the way of the steady aim where that makes the change in time", () => {
    const late = factsOf("| G | C | G | C |", 240, { hand: "learner" }).filter(
      ({ tooFast }) => tooFast,
    );
    expect(late.map(({ remedy }) => remedy).join("\n")).toMatch(
      /^With the aim Easiest hardest change: (up|down|same) .* from fret \d+, needs \d+ of \d+\u00a0ms\.$/m,
    );
  });
});
