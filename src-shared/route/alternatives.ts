import type { Timeline } from "../chart/song.ts";
import type { Neck } from "../neck/neck.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { compareInOrder } from "./compareInOrder.ts";
import type { Path } from "./layers.ts";
import { routeOf } from "./planRoute.ts";
import { type PlanRequest, type Problem, problemOf, withOpen } from "./problem.ts";
import type { Route } from "./route.ts";
import { type Chooser, chooserFor, chosen, type Solution } from "./solve.ts";
import { isIn, spanOf, stretchesOf } from "./stretch.ts";

/** For each chord, by its place among the song's chords: 1 for each of its states that is meant. */
type States = readonly Uint8Array[];

/** A problem, which of its chords each slot has, and where a slot's states begin among all slots'. */
type Song = {
  readonly problem: Problem;
  readonly chooser: Chooser;
  readonly chordOf: readonly number[];
  /** One slot of each chord. */
  readonly slotOf: readonly number[];
  readonly stateAt: readonly number[];
};

const songOf = (problem: Problem, request: PlanRequest): Song => {
  const chords = new Map<string, number>();
  const slotOf: number[] = [];
  const stateAt: number[] = [];
  let states = 0;
  const chordOf = problem.slots.map(({ chord }, slot) => {
    stateAt.push(states);
    states += problem.layers.width(slot);
    const own = chords.get(chord.name) ?? slotOf.length;
    if (own === slotOf.length) {
      chords.set(chord.name, own);
      slotOf.push(slot);
    }
    return own;
  });
  return { problem, chooser: chooserFor(problem, request), chordOf, slotOf, stateAt };
};

/** The best choice within a corner, and the states that it holds each chord in. */
type Best = { readonly problem: Problem; readonly path: Path; readonly homes: States };

/**
 * A part of all choices: those that keep each chord to some states. None comes to less than
 * `atLeast`, which may end before the last criterion; where the best of them is known that is what
 * it comes to.
 */
type Corner = {
  readonly allowed: States;
  /** What the choices come to before what the chooser counts: the span of a region, else nothing. */
  readonly before: readonly number[];
  readonly atLeast: readonly number[];
  readonly best: Best | null;
};

/** Whether a corner is to be looked at before another: what is not known yet first among equals. */
const isAhead = (a: Corner, b: Corner): boolean => {
  const difference = compareInOrder(a.atLeast, b.atLeast);
  if (difference !== 0 || !a.best || !b.best) {
    return difference < 0 || (difference === 0 && a.best === null);
  }
  return compareInOrder(a.best.path.choice, b.best.path.choice) < 0;
};

/** Puts a corner in its place in a list whose foremost is the last; the list is the caller's own. */
const putIn = (open: Corner[], corner: Corner): void => {
  let [low, high] = [0, open.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const other = open[middle];
    if (other && isAhead(corner, other)) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  open.splice(low, 0, corner);
};

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
const wholeOf = ({ problem, slotOf }: Song, { aim }: PlanRequest): readonly Corner[] => {
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

/** The problem with each chord kept to the states allowed. */
const within = ({ problem, chordOf }: Song, allowed: States): Problem => {
  // Slots of one chord mostly have the same array of what is open: one is made for all of them.
  const known = new Map<Uint8Array, Uint8Array>();
  return withOpen(
    problem,
    chordOf.map((chord, slot) => {
      const open = problem.layers.open(slot);
      const found = known.get(open);
      if (found) {
        return found;
      }
      const both = open.map((is, state) => is & (allowed[chord]?.[state] ?? 0));
      known.set(open, both);
      return both;
    }),
  );
};

const homesOf = ({ problem, chordOf, slotOf }: Song, { choice }: Path): States => {
  const homes = slotOf.map((slot) => new Uint8Array(problem.layers.width(slot)));
  for (let slot = 0; slot < choice.length; slot += 1) {
    const home = homes[chordOf[slot] ?? 0];
    if (home) {
      home[choice[slot] ?? 0] = 1;
    }
  }
  return homes;
};

/** The corner with its best choice; null where there is none. */
const settled = (song: Song, corner: Corner): Corner | null => {
  const problem = within(song, corner.allowed);
  const path = song.chooser.choose(problem);
  return (
    path && {
      ...corner,
      atLeast: [...corner.before, ...path.costs],
      best: { problem, path, homes: homesOf(song, path) },
    }
  );
};

/** Whether some chord is never held in the same voicing by both. */
const reallyDiffer = (a: States, b: States): boolean =>
  a.some((home, chord) => home.every((held, state) => !(held && b[chord]?.[state])));

/**
 * What the choices of a corner come to at least when a chord keeps to some of its states: each slot
 * of the chord must then be passed through one of those. null where it cannot.
 */
const leastWith = (
  { chordOf, stateAt }: Song,
  { path }: Best,
  least: readonly Float64Array[],
  chord: number,
  states: Uint8Array,
): readonly number[] | null => {
  for (const [level, through] of least.entries()) {
    let most = Number.NEGATIVE_INFINITY;
    for (let slot = 0; slot < chordOf.length; slot += 1) {
      if (chordOf[slot] === chord) {
        let here = Number.POSITIVE_INFINITY;
        for (let state = 0; state < states.length; state += 1) {
          const value = through[(stateAt[slot] ?? 0) + state] ?? 0;
          if (states[state] === 1 && value < here) {
            here = value;
          }
        }
        most = Math.max(most, here);
      }
    }
    if (level === 0 && most === Number.POSITIVE_INFINITY) {
      return null;
    }
    if (most > (path.costs[level] ?? 0)) {
      return [...path.costs.slice(0, level), most];
    }
  }
  return path.costs;
};

/** The corners, one for each chord, in which that chord keeps away from where `homes` holds it. */
const partsAwayFrom = (
  song: Song,
  corner: Corner,
  best: Best,
  homes: States,
): readonly Corner[] => {
  const least = song.chooser.least(best.problem, best.path);
  return corner.allowed.flatMap((own, chord): readonly Corner[] => {
    const states = own.map((is, state) => (is && !homes[chord]?.[state] ? 1 : 0));
    const costs = leastWith(song, best, least, chord, states);
    return costs === null
      ? []
      : [
          {
            allowed: corner.allowed.with(chord, states),
            before: corner.before,
            atLeast: [...corner.before, ...costs],
            best: null,
          },
        ];
  });
};

/**
 * The solutions that really differ from all before them, best first. A corner whose best is too much
 * like one of those is parted into corners that keep away from it; what may be best of all is looked
 * at first, so that most corners are never solved.
 */
function* solutionsInTurn(song: Song, request: PlanRequest): Generator<Solution, void, void> {
  const open: Corner[] = [];
  for (const corner of wholeOf(song, request)) {
    putIn(open, corner);
  }
  const found: States[] = [];
  for (let corner = open.pop(); corner; corner = open.pop()) {
    const { best } = corner;
    if (best === null) {
      const known = settled(song, corner);
      if (known) {
        putIn(open, known);
      }
      continue;
    }
    const like = found.find((homes) => !reallyDiffer(homes, best.homes));
    if (!like) {
      found.push(best.homes);
      const path = { choice: best.path.choice, costs: corner.atLeast };
      yield { voicings: chosen(song.problem, path), path };
    }
    for (const part of partsAwayFrom(song, corner, best, like ?? best.homes)) {
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
  timeline: Pick<Timeline, "stays" | "bars" | "length">,
  neck: Neck,
  request: PlanRequest,
): Generator<Route, void, void> {
  const problem = problemOf(timeline, neck, request);
  if (problem.slots.length === 0) {
    return;
  }
  for (const solution of solutionsInTurn(songOf(problem, request), request)) {
    yield routeOf(problem, solution, timeline, neck, request);
  }
}

/** The first `count` of routesInTurn, or as many as there are. */
export const alternatives = (
  timeline: Pick<Timeline, "stays" | "bars" | "length">,
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
