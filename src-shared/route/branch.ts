import { type ByChord, homesOf, type States, within } from "./chordStates.ts";
import { compareInOrder } from "./compareInOrder.ts";
import type { Path } from "./layers.ts";
import type { Problem } from "./problem.ts";
import type { Chooser } from "./solve.ts";

/** The best choice within a branch, and the states that it holds each chord in. */
export type Best = { readonly problem: Problem; readonly path: Path; readonly homes: States };

/**
 * A part of all choices: those that keep each chord to some states. None comes to less than
 * `atLeast`, which may end before the last criterion; where the best of them is known that is what
 * it comes to.
 */
export type Branch = {
  readonly allowed: States;
  /** What the choices come to before what the chooser counts: the span of a region, else nothing. */
  readonly before: readonly number[];
  readonly atLeast: readonly number[];
  readonly best: Best | null;
};

/** Whether a branch is to be looked at before another: what is not known yet first among equals. */
const isAhead = (a: Branch, b: Branch): boolean => {
  const difference = compareInOrder(a.atLeast, b.atLeast);
  if (difference !== 0 || !a.best || !b.best) {
    return difference < 0 || (difference === 0 && a.best === null);
  }
  return compareInOrder(a.best.path.choice, b.best.path.choice) < 0;
};

/** Puts a branch in its place in a list whose foremost is the last; the list is the caller's own. */
export const putIn = (open: Branch[], branch: Branch): void => {
  let [low, high] = [0, open.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const other = open[middle];
    if (other && isAhead(branch, other)) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  open.splice(low, 0, branch);
};

/** The branch with its best choice; null where there is none. */
export const settled = (song: ByChord, chooser: Chooser, branch: Branch): Branch | null => {
  const problem = within(song, branch.allowed);
  const path = chooser.choose(problem);
  return (
    path && {
      ...branch,
      atLeast: [...branch.before, ...path.costs],
      best: { problem, path, homes: homesOf(song, path) },
    }
  );
};

/**
 * What the choices of a branch come to at least when a chord keeps to some of its states: each slot
 * of the chord must then be passed through one of those. null where it cannot.
 */
const leastWith = (
  { chordOf, stateAt }: ByChord,
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

/** The branches, one for each chord, in which that chord keeps away from where `homes` holds it. */
export const partsAwayFrom = (
  song: ByChord,
  chooser: Chooser,
  branch: Branch,
  best: Best,
  homes: States,
): readonly Branch[] => {
  const least = chooser.least(best.problem, best.path);
  return branch.allowed.flatMap((own, chord): readonly Branch[] => {
    const states = own.map((is, state) => (is && !homes[chord]?.[state] ? 1 : 0));
    const costs = leastWith(song, best, least, chord, states);
    return costs === null
      ? []
      : [
          {
            allowed: branch.allowed.with(chord, states),
            before: branch.before,
            atLeast: [...branch.before, ...costs],
            best: null,
          },
        ];
  });
};
