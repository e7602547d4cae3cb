import { describe, expect, test } from "vitest";
import {
  ceilingOf,
  chordsMoved,
  countChanges,
  hardestLeg,
  isSameRoute,
  sayCeiling,
  sayHardest,
  shapesUsed,
} from "../../../src-renderer/parts/routeFacts.ts";
import { chartToScore, otherRoutes } from "../../../src-shared/chartToScore.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import type { Route } from "../../../src-shared/route/route.ts";
import { type PlanSettings, wholeNeckPlan } from "../../../src-shared/settings.ts";

const walkOf = (bars: string, plan: Partial<PlanSettings> = {}, tempo: number | null = null) =>
  chartToScore(
    `Title: Ferry Steps\nKey: G\nTime: 2/2\nTempo: 90\n${bars}\n`,
    { ...wholeNeckPlan, fretHigh: 17, ...plan },
    tempo,
  );
const routeOf = (...args: Parameters<typeof walkOf>): Route => {
  const { route } = walkOf(...args);
  if (!route) throw new Error("no route");
  return route;
};
const HALF = { beats: 2, unit: 2 } as const;

describe("a route in figures", () => {
  test("names its hardest change with the time it needs and has", () => {
    const route = routeOf("| G | C | G D | G |", { shapes: ["D"] });
    const leg = hardestLeg(route);
    expect(leg?.shortestEighth).toBe(
      Math.max(...route.legs.map(({ shortestEighth }) => shortestEighth ?? 0)),
    );
    // D shape: G with the index finger at 7, D at 14 (common practice): the longest way.
    expect(sayHardest(route)).toBe(
      `G to D, up 7: needs ${Math.round(leg?.need ?? 0)} of ${Math.round(leg?.window ?? 0)}\u00a0ms`,
    );
  });

  test("can be played at its ceiling tempo and not two beats a minute above it", () => {
    const plan = { shapes: ["D"] } as const;
    const bars = "| G | C | G D | G |";
    const leg = hardestLeg(routeOf(bars, plan));
    const ceiling = leg && ceilingOf(leg, HALF);
    expect(sayCeiling(routeOf(bars, plan), HALF)).toBe(`Up to ${ceiling} half notes a minute`);
    const tooFastAt = (tempo: number): number =>
      routeOf(bars, plan, tempo).legs.filter(({ way }) => way === "too-fast").length;
    expect(tooFastAt(ceiling ?? 0)).toBe(0);
    expect(tooFastAt((ceiling ?? 0) + 2)).toBeGreaterThan(0);
  });

  test("has no hardest change and any tempo where nothing moves", () => {
    const route = routeOf("| G | G |");
    expect(sayHardest(route)).toBe("None: nothing moves");
    expect(sayCeiling(route, HALF)).toBe("Any tempo");
  });

  test("counts slides and re-formed hands, and names its shapes by use", () => {
    const route = routeOf("| G | C | D | G |", { shapes: ["D"] });
    expect(countChanges(route)).toEqual({ slides: 3, reshapes: 0 });
    expect(shapesUsed(route, tunings[0])).toEqual([{ shape: "D", says: "D shape" }]);
  });

  test("is told from another by the chords that never share a grip", () => {
    const [first, second] = otherRoutes(walkOf("| G | C | D7 | G |"), 2);
    if (!first || !second) throw new Error("fewer than two routes");
    expect(isSameRoute(first, second)).toBe(false);
    expect(isSameRoute(first, first)).toBe(true);
    expect(chordsMoved(first, first)).toEqual([]);
    expect(chordsMoved(second, first).length).toBeGreaterThan(0);
    expect(chordsMoved(second, first).toSorted()).toEqual(chordsMoved(first, second).toSorted());
  });
});
