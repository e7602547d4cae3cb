import type { Timeline } from "../chart/song.ts";
import type { Neck } from "../neck/neck.ts";
import { sameGrip } from "../voicing/sameGrip.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { compareInOrder } from "./compareInOrder.ts";
import { narrowed, type PlanRequest, problemOf } from "./problem.ts";
import type { Leg, Route } from "./route.ts";
import { solve } from "./solve.ts";

/** What the best route through another voicing would come to. */
export type Elsewhere = {
  readonly voicing: Voicing;
  /** By each criterion of the aim, the route's own subtracted; the first that is not 0 is above 0. */
  readonly more: readonly number[];
};

/** Why a placement is where it is: its two changes, and what every other voicing would cost. */
export type Explanation = {
  /** The change into it; null where it is the first and the song does not go round. */
  readonly into: Leg | null;
  /** The change out of it; null where it is the last and the song does not go round. */
  readonly outOf: Leg | null;
  /** Least costly first; those through which no route leads are left out. */
  readonly elsewhere: readonly Elsewhere[];
};

/**
 * Explains one placement of a route that planRoute found for the same song and request: for every
 * other voicing that shapes, range and pins allow there, what the best route through it costs more.
 */
export const explain = (
  timeline: Pick<Timeline, "stays" | "bars" | "meter" | "length">,
  neck: Neck,
  request: PlanRequest,
  route: Route,
  index: number,
): Explanation => {
  const problem = problemOf(timeline, neck, request);
  const held = route.placements[index];
  const others = (problem.voicings[index] ?? []).filter(
    (voicing, state) =>
      problem.layers.open(index)[state] === 1 && !(held && sameGrip(voicing, held.voicing)),
  );
  const here = problem.slots[index];
  const elsewhere = others.flatMap((voicing): readonly Elsewhere[] => {
    const through = narrowed(problem, (slot, each) => slot !== here || each === voicing);
    const solution = solve(through, request);
    return solution
      ? [{ voicing, more: solution.path.costs.map((cost, k) => cost - (route.costs[k] ?? 0)) }]
      : [];
  });
  return {
    into: route.legs.find((leg) => leg.to === index) ?? null,
    outOf: route.legs.find((leg) => leg.from === index) ?? null,
    elsewhere: elsewhere.toSorted((a, b) => compareInOrder(a.more, b.more)),
  };
};
