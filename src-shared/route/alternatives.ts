import type { Timeline } from "../chart/song.ts";
import type { Neck } from "../neck/neck.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { isBefore } from "./choosePath.ts";
import { routeOf } from "./planRoute.ts";
import { narrowed, type PlanRequest, type Problem, problemOf } from "./problem.ts";
import type { Route } from "./route.ts";
import { type Solution, solve } from "./solve.ts";

/** A chord's voicings in a solution, each as its frets. */
type Homes = ReadonlyMap<string, ReadonlySet<string>>;

const gripOf = (voicing: Voicing): string => voicing.frets.join();

const homesOf = ({ slots }: Problem, voicings: readonly Voicing[]): Homes => {
  const homes = new Map<string, Set<string>>();
  for (const [index, voicing] of voicings.entries()) {
    const name = slots[index]?.chord.name ?? "";
    const home = homes.get(name) ?? new Set<string>();
    homes.set(name, home.add(gripOf(voicing)));
  }
  return homes;
};

/** Whether some chord is never held in the same voicing by both. */
const reallyDiffer = (a: Homes, b: Homes): boolean =>
  [...a].some(([name, grips]) => ![...grips].some((grip) => b.get(name)?.has(grip)));

/** For each route already found, the chord that must keep away from all of its voicings there. */
type Bans = readonly string[];

type Candidate = { readonly bans: Bans; readonly solution: Solution; readonly homes: Homes };

const underBans = (
  problem: Problem,
  request: PlanRequest,
  found: readonly Homes[],
  bans: Bans,
): Candidate | null => {
  const part = narrowed(problem, (slot, voicing) =>
    bans.every(
      (name, index) => slot.chord.name !== name || !found[index]?.get(name)?.has(gripOf(voicing)),
    ),
  );
  const solution = solve(part, request);
  return solution && { bans, solution, homes: homesOf(problem, solution.voicings) };
};

/** The best solution that really differs from all found ones: best first over what to keep away. */
const nextBest = (
  problem: Problem,
  request: PlanRequest,
  found: readonly Homes[],
): Candidate | null => {
  const names = [...new Set(problem.slots.map((slot) => slot.chord.name))];
  const open: Candidate[] = [];
  const offer = (bans: Bans): void => {
    const candidate = underBans(problem, request, found, bans);
    if (candidate) {
      open.push(candidate);
    }
  };
  offer([]);
  while (open.length > 0) {
    const best = open.reduce((least, each) =>
      isBefore(each.solution.path, least.solution.path) ? each : least,
    );
    open.splice(open.indexOf(best), 1);
    if (found.every((homes) => reallyDiffer(homes, best.homes))) {
      return best;
    }
    for (const name of names) {
      offer([...best.bans, name]);
    }
  }
  return null;
};

/**
 * The best routes that really differ, the best one first, at most `count` of them: of any two there
 * is a chord that they never hold in the same voicing, so that a single repeat moved makes no new
 * route. They are the first such ones in the order of all routes by the aim. Empty where there is no
 * route at all.
 */
export const alternatives = (
  timeline: Pick<Timeline, "stays" | "bars" | "length">,
  neck: Neck,
  request: PlanRequest,
  count: number,
): readonly Route[] => {
  const problem = problemOf(timeline, neck, request);
  const found: Candidate[] = [];
  while (found.length < count) {
    const next = nextBest(
      problem,
      request,
      found.map(({ homes }) => homes),
    );
    if (!next || problem.slots.length === 0) {
      break;
    }
    found.push(next);
  }
  return found.map(({ solution }) => routeOf(problem, solution, timeline, neck, request));
};
