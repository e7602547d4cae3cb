import type { Timeline } from "../chart/song.ts";
import type { Neck } from "../neck/neck.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { type Branch, partsAwayFrom, putIn, settled } from "./branch.ts";
import { type ByChord, byChord, reallyDiffer, type States } from "./chordStates.ts";
import { routeOf } from "./planRoute.ts";
import { type PlanRequest, type Problem, problemOf } from "./problem.ts";
import type { Route } from "./route.ts";
import { chooserFor, chosen, type Solution } from "./solve.ts";
import { isIn, spanOf, stretchesOf } from "./stretch.ts";

const statesWhere = (
  voicings: readonly Voicing[],
  is: (voicing: Voicing) => boolean,
): Uint8Array => {
  const states = new Uint8Array(voicings.length);
  for (const [state, voicing] of voicings.entries()) {
    states[state] = is(voicing) ? 1 : 0;
  }
  return states;
};

/** Where the search starts: everything, or for a region each stretch that holds every chord. */
const wholeOf = ({ problem, slotOf }: ByChord, { aim }: PlanRequest): readonly Branch[] => {
  const allowedWhere = (is: (voicing: Voicing) => boolean): States =>
    slotOf.map((slot) => statesWhere(problem.voicings[slot] ?? [], is));
  if (aim !== "region") {
    return [{ allowed: allowedWhere(() => true), before: [], atLeast: [], best: null }];
  }
  return stretchesOf(problem).map((stretch) => ({
    allowed: allowedWhere((voicing) => isIn(stretch, voicing)),
    before: [spanOf(stretch)],
    atLeast: [spanOf(stretch)],
    best: null,
  }));
};

/**
 * The solutions that really differ from all before them, best first. A branch whose best is too much
 * like one of those is parted into branches that keep away from it; what may be best of all is looked
 * at first, so that most branches are never solved.
 */
function* solutionsInTurn(problem: Problem, request: PlanRequest): Generator<Solution, void, void> {
  const song = byChord(problem);
  const chooser = chooserFor(problem, request);
  const open: Branch[] = [];
  for (const branch of wholeOf(song, request)) {
    putIn(open, branch);
  }
  const found: States[] = [];
  for (let branch = open.pop(); branch; branch = open.pop()) {
    const { best } = branch;
    if (best === null) {
      const known = settled(song, chooser, branch);
      if (known) {
        putIn(open, known);
      }
      continue;
    }
    const like = found.find((homes) => !reallyDiffer(homes, best.homes));
    if (!like) {
      found.push(best.homes);
      const path = { choice: best.path.choice, costs: branch.atLeast };
      yield { voicings: chosen(problem, path), path };
    }
    for (const part of partsAwayFrom(song, chooser, branch, best, like ?? best.homes)) {
      putIn(open, part);
    }
  }
}

/**
 * The best routes that really differ, one after the other as they are asked for, the best one first:
 * of any two there is a chord that they never hold in the same voicing, so that a single repeat
 * moved makes no new route. They are the first such ones in the order of all routes by the aim. None
 * where there is no route at all, or nothing to hold.
 */
export function* routesInTurn(
  timeline: Pick<Timeline, "stays" | "bars" | "meter" | "length">,
  neck: Neck,
  request: PlanRequest,
): Generator<Route, void, void> {
  const problem = problemOf(timeline, neck, request);
  if (problem.slots.length === 0) {
    return;
  }
  for (const solution of solutionsInTurn(problem, request)) {
    yield routeOf(problem, solution, timeline, neck, request);
  }
}

/** The first `count` of routesInTurn, or as many as there are. */
export const alternatives = (
  timeline: Pick<Timeline, "stays" | "bars" | "meter" | "length">,
  neck: Neck,
  request: PlanRequest,
  count: number,
): readonly Route[] => {
  const routes: Route[] = [];
  if (count > 0) {
    for (const route of routesInTurn(timeline, neck, request)) {
      routes.push(route);
      if (routes.length >= count) {
        break;
      }
    }
  }
  return routes;
};
