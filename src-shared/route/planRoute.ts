import type { Timeline } from "../chart/song.ts";
import type { Neck } from "../neck/neck.ts";
import { millimetres, milliseconds } from "../units.ts";
import { reformedFingers } from "../voicing/fingering.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { longestOf, needOf, type Windows, wayFor, windowsOf } from "./change.ts";
import { travelMicrometres } from "./cost.ts";
import { clashAt, type Pin } from "./pins.ts";
import { type PlanRequest, type Problem, pinsInForce, problemOf } from "./problem.ts";
import type { Leg, Placement, Route } from "./route.ts";
import type { Slot } from "./slot.ts";
import { type Solution, solve } from "./solve.ts";

/**
 * A route; or the first slot of each chord that no allowed voicing reaches, in order of playing; or
 * the first slot whose pins cannot all be met.
 */
export type Plan =
  | { readonly kind: "route"; readonly route: Route }
  | { readonly kind: "unreachable"; readonly slots: readonly Slot[] }
  | { readonly kind: "clash"; readonly slot: Slot; readonly pins: readonly Pin[] };

/**
 * The leg from one placement to the next. Where `seam` is given it is the length of what goes round,
 * and the next placement comes that much later than it stands.
 */
export const legBetween = (
  from: Placement,
  to: Placement,
  windows: Windows,
  seam: boolean,
  neck: Neck,
  { hand, eighth }: PlanRequest,
): Leg => {
  const reformed = reformedFingers(from.voicing, to.voicing);
  const frets = to.voicing.position - from.voicing.position;
  const need = needOf(hand, from.voicing, to.voicing, neck.scaleLength);
  const { way, eighths } = wayFor(need, eighth, windows);
  const moves = frets !== 0 ? "slide" : "hold";
  return {
    from: from.index,
    to: to.index,
    kind: reformed.length > 0 ? "reshape" : moves,
    frets,
    distance: millimetres(travelMicrometres(from.voicing, to.voicing) / 1000),
    reformed,
    seam,
    way,
    need,
    window: milliseconds(eighths * eighth),
    shortestEighth: need === 0 ? null : milliseconds(need / longestOf(windows)),
  };
};

const placementOf = (slot: Slot, voicing: Voicing, index: number): Placement => ({
  index,
  stay: slot.stay,
  bar: slot.bar,
  start: slot.start,
  length: slot.length,
  chord: slot.chord,
  voicing,
});

/** A solution told as a route: placements, and the legs between them. */
export const routeOf = (
  { slots }: Problem,
  { voicings, path }: Solution,
  timeline: Pick<Timeline, "length">,
  neck: Neck,
  request: PlanRequest,
): Route => {
  const placements = voicings.flatMap((voicing, index) => {
    const slot = slots[index];
    return slot ? [placementOf(slot, voicing, index)] : [];
  });
  const [first] = placements;
  const windowsInto = (from: Placement, to: Placement, seam: number | null): Windows => {
    const [left, reached] = [slots[from.index], slots[to.index]];
    if (!left || !reached) {
      throw new Error(`no slots for the step from ${from.index} to ${to.index}`);
    }
    return windowsOf(left, reached, seam);
  };
  const legs = placements.flatMap((from, index): readonly Leg[] => {
    const to = placements[index + 1];
    if (to) {
      return [legBetween(from, to, windowsInto(from, to, null), false, neck, request)];
    }
    return request.goesRound && first && index > 0
      ? [legBetween(from, first, windowsInto(from, first, timeline.length), true, neck, request)]
      : [];
  });
  const travel = legs.reduce((sum, leg) => sum + Math.round(1000 * leg.distance), 0);
  return {
    aim: request.aim,
    placements,
    legs,
    travel: millimetres(travel / 1000),
    costs: path.costs,
  };
};

/** The first slot of each chord that has nothing left to take. */
const slotsWithoutVoicing = ({ slots, layers }: Problem): readonly Slot[] => {
  const bare = slots.filter((_, layer) => !layers.open(layer).includes(1));
  return bare.filter(
    (slot, index) => bare.findIndex((other) => other.chord.name === slot.chord.name) === index,
  );
};

/** Why there is no route. */
const refusal = (problem: Problem, request: PlanRequest): Plan => {
  const inForce = pinsInForce(request);
  const slot = problem.slots.find((each) => clashAt(inForce, each).length > 0);
  if (!slot) {
    return { kind: "unreachable", slots: slotsWithoutVoicing(problem) };
  }
  const clash = clashAt(inForce, slot);
  const pins = request.pins.filter((_, index) => clash.some((pin) => pin === inForce[index]));
  return { kind: "clash", slot, pins };
};

/**
 * The route that is best by the request's aim, found by dynamic programming, so that no other choice
 * of allowed voicings is better. Of several equally good it is the first in the order of voicingsOf,
 * compared from the first placement on: the same song always gives the same route. N.C. takes none.
 * `slots` are those of the same song, where they are known.
 */
export const planRoute = (
  timeline: Pick<Timeline, "stays" | "bars" | "meter" | "length">,
  neck: Neck,
  request: PlanRequest,
  slots?: readonly Slot[],
): Plan => {
  const problem = problemOf(timeline, neck, request, slots);
  const solution = solve(problem, request);
  return solution
    ? { kind: "route", route: routeOf(problem, solution, timeline, neck, request) }
    : refusal(problem, request);
};
