import type { Voicing } from "../voicing/voicing.ts";
import { chooseAlike } from "./chooseAlike.ts";
import { choosePath } from "./choosePath.ts";
import { isBefore, type Path } from "./layers.ts";
import { leastThrough } from "./leastThrough.ts";
import { lookAhead } from "./lookAhead.ts";
import { narrowed, type PlanRequest, type Problem } from "./problem.ts";
import { isIn, spanOf, stretchesOf } from "./stretch.ts";
import { NEVER } from "./sweep.ts";

/** A voicing for each slot, and what the choice comes to by each criterion. */
export type Solution = { readonly voicings: readonly Voicing[]; readonly path: Path };

/** The voicings that a path of a problem chooses. */
export const chosen = (problem: Problem, path: Path): readonly Voicing[] =>
  path.choice.map((state, layer) => {
    const voicing = problem.voicings[layer]?.[state];
    if (!voicing) {
      throw new Error(`no voicing ${state} in slot ${layer}`);
    }
    return voicing;
  });

/** How to choose within a problem, or within one that is narrowed from it. */
export type Chooser = {
  readonly choose: (problem: Problem) => Path | null;
  /**
   * For each criterion, and in it for each slot's voicings one after the other, what a choice comes
   * to at least that has the voicing; none comes to less than `best`, the choice of `choose`.
   */
  readonly least: (problem: Problem, best: Path) => readonly Float64Array[];
};

const free: Chooser = {
  choose: ({ layers, criteria, goesRound }) => choosePath(layers, criteria, goesRound),
  least: ({ layers, criteria, goesRound }, { costs }) =>
    leastThrough(layers, criteria, goesRound, costs),
};

/** The same each time, but for a song too tangled for that. A free choice never comes to more. */
const alike: Chooser = {
  ...free,
  choose: (problem) => {
    const path = chooseAlike(problem);
    return path === "too-wide" ? free.choose(problem) : path;
  },
};

/** The least of each run of `fan(layer)` values, layer after layer. */
const leastOfFans = (
  values: Float64Array,
  { slots, layers }: Problem,
  fan: (layer: number) => number,
): Float64Array => {
  const least: number[] = [];
  let at = 0;
  for (let layer = 0; layer < slots.length; layer += 1) {
    for (let state = 0; state < layers.width(layer); state += 1) {
      least.push(values.subarray(at, at + fan(layer)).reduce((a, b) => Math.min(a, b)));
      at += fan(layer);
    }
  }
  return Float64Array.from(least);
};

/** As few as can be of the chords that come back after one other in the same voicing. */
const varied = (whole: Problem): Chooser => {
  const ahead = lookAhead(whole);
  if (!ahead) {
    return {
      choose: (problem) => {
        const path = free.choose(problem);
        return path && { choice: path.choice, costs: [0, ...path.costs] };
      },
      least: (problem, { choice, costs }) => {
        const [first, ...others] = free.least(problem, { choice, costs: costs.slice(1) });
        return first ? [first.map((value) => (value === NEVER ? NEVER : 0)), first, ...others] : [];
      },
    };
  }
  const { criteria, layersOf, fan } = ahead;
  return {
    choose: (problem) => {
      const path = choosePath(layersOf(problem), criteria, problem.goesRound);
      return (
        path && {
          choice: path.choice.map((state, layer) => Math.floor(state / fan(layer))),
          costs: path.costs,
        }
      );
    },
    least: (problem, { costs }) =>
      leastThrough(layersOf(problem), criteria, problem.goesRound, costs).map((values) =>
        leastOfFans(values, problem, fan),
      ),
  };
};

/** How a request chooses within a problem. Variety does not heed `alike`, which is its opposite. */
export const chooserFor = (
  problem: Problem,
  request: Pick<PlanRequest, "aim" | "alike">,
): Chooser => {
  if (request.aim === "variety") {
    return varied(problem);
  }
  return request.alike ? alike : free;
};

/** The narrowest stretch of positions that holds every chord; of several the best, then the lowest. */
const inNarrowest = (problem: Problem, { choose }: Chooser): Path | null => {
  const stretches = stretchesOf(problem);
  const [narrowest] = stretches;
  if (!narrowest) {
    return null;
  }
  const span = spanOf(narrowest);
  let best: Path | null = null;
  for (const stretch of stretches.filter((each) => spanOf(each) === span)) {
    const path = choose(narrowed(problem, (_, voicing) => isIn(stretch, voicing)));
    if (path && (best === null || isBefore(path, best))) {
      best = path;
    }
  }
  return best && { choice: best.choice, costs: [span, ...best.costs] };
};

/** The best choice of voicings for what a request asks; null where nothing is left to choose. */
export const solve = (
  problem: Problem,
  request: Pick<PlanRequest, "aim" | "alike">,
): Solution | null => {
  const chooser = chooserFor(problem, request);
  const path = request.aim === "region" ? inNarrowest(problem, chooser) : chooser.choose(problem);
  return path && { voicings: chosen(problem, path), path };
};
