import type { Voicing } from "../voicing/voicing.ts";
import { type Criterion, choosePath, type Layers, type Path } from "./choosePath.ts";
import { narrowed, type Problem, positionsOf } from "./problem.ts";
import type { Aim } from "./route.ts";

/** A voicing for each slot, and what the choice comes to by each criterion. */
export type Solution = { readonly voicings: readonly Voicing[]; readonly path: Path };

const chosen = (problem: Problem, path: Path): readonly Voicing[] =>
  path.choice.map((state, layer) => {
    const voicing = problem.voicings[layer]?.[state];
    if (!voicing) {
      throw new Error(`no voicing ${state} in slot ${layer}`);
    }
    return voicing;
  });

/** Below 0 where the first list is smaller at the first place where they differ. */
const compared = (a: readonly number[], b: readonly number[]): number => {
  const differs = a.findIndex((value, index) => value !== b[index]);
  return differs < 0 ? 0 : (a[differs] ?? 0) - (b[differs] ?? 0);
};

/** Whether one path is better than another, or as good and earlier in order. */
export const isBefore = (a: Path, b: Path): boolean =>
  (compared(a.costs, b.costs) || compared(a.choice, b.choice)) < 0;

/** The narrowest stretch of positions that holds every chord; of several the best, then the lowest. */
const inNarrowest = (problem: Problem): Path | null => {
  const positions = positionsOf(problem);
  const spans = [
    ...new Set(
      positions.flatMap((low) => positions.filter((high) => high >= low).map((high) => high - low)),
    ),
  ].toSorted((a, b) => a - b);
  for (const span of spans) {
    let best: Path | null = null;
    for (const low of positions) {
      const part = narrowed(
        problem,
        (_, { position }) => position >= low && position <= low + span,
      );
      const path = choosePath(part.layers, part.criteria, part.goesRound);
      if (path && (best === null || isBefore(path, best))) {
        best = path;
      }
    }
    if (best) {
      return { choice: best.choice, costs: [span, ...best.costs] };
    }
  }
  return null;
};

/**
 * Looks at two neighbouring slots as one layer, so that a step sees three: a chord that comes back
 * after one other in the same voicing costs 1, before all else. A row of fewer than three slots has
 * nothing to come back to.
 */
const withVariety = (problem: Problem): Path | null => {
  const { slots, voicings, layers, criteria, goesRound } = problem;
  const count = slots.length;
  if (count < 3) {
    const plain = choosePath(layers, criteria, goesRound);
    return plain && { choice: plain.choice, costs: [0, ...plain.costs] };
  }
  const width = (slot: number): number => voicings[slot % count]?.length ?? 0;
  const pairCount = goesRound ? count : count - 1;
  const pairs: Layers = {
    count: pairCount,
    width: (layer) => width(layer) * width(layer + 1),
    isOpen: (layer, state) =>
      layers.isOpen(layer, Math.floor(state / width(layer + 1))) &&
      layers.isOpen((layer + 1) % count, state % width(layer + 1)),
  };
  const table = (from: number, of: (a: number, b: number, c: number) => number): Float64Array => {
    const [first, second, third] = [width(from), width(from + 1), width(from + 2)];
    const costs = new Float64Array(first * second * second * third).fill(Number.POSITIVE_INFINITY);
    for (let a = 0; a < first; a += 1) {
      for (let b = 0; b < second; b += 1) {
        for (let c = 0; c < third; c += 1) {
          costs[(a * second + b) * (second * third) + b * third + c] = of(a, b, c);
        }
      }
    }
    return costs;
  };
  const returns: Criterion = {
    by: "sum",
    costs: (from) => {
      const same = slots[from]?.chord.name === slots[(from + 2) % count]?.chord.name;
      return table(from, (a, _, c) => (same && a === c ? 1 : 0));
    },
  };
  // A step between pairs pays for the first half of the pair it leaves; the last pair of a row that
  // does not go round pays for both of its halves, since nothing follows it.
  const lastStep = pairCount - 2;
  const inPairs = ({ by, costs }: Criterion): Criterion => ({
    by,
    costs: (from) => {
      const own = costs(from % count, (from + 1) % count);
      const next = costs((from + 1) % count, (from + 2) % count);
      const paysTwice = !goesRound && from === lastStep;
      return table(from, (a, b, c) => {
        const cost = own[a * width(from + 1) + b] ?? 0;
        return paysTwice ? cost + (next[b * width(from + 2) + c] ?? 0) : cost;
      });
    },
  });
  const path = choosePath(pairs, [returns, ...criteria.map(inPairs)], goesRound);
  if (!path) {
    return null;
  }
  const firsts = path.choice.map((state, layer) => Math.floor(state / width(layer + 1)));
  const last = path.choice.at(-1) ?? 0;
  const choice = goesRound ? firsts : [...firsts, last % width(count - 1)];
  return { choice, costs: path.costs };
};

/** The best choice of voicings for a problem by an aim; null where nothing is left to choose. */
export const solve = (problem: Problem, aim: Aim): Solution | null => {
  const path =
    aim === "region"
      ? inNarrowest(problem)
      : aim === "variety"
        ? withVariety(problem)
        : choosePath(problem.layers, problem.criteria, problem.goesRound);
  return path && { voicings: chosen(problem, path), path };
};
