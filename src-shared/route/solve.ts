import type { Voicing } from "../voicing/voicing.ts";
import { chooseAlike } from "./chooseAlike.ts";
import { type Criterion, choosePath, isBefore, type Layers, type Path } from "./choosePath.ts";
import { narrowed, type PlanRequest, type Problem, positionsOf } from "./problem.ts";

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

type Choose = (problem: Problem) => Path | null;

/** Whether every slot has a voicing left within a stretch of positions. */
const holdsAll = (problem: Problem, low: number, high: number): boolean =>
  problem.voicings.every((voicings, layer) => {
    const open = problem.layers.open(layer);
    return voicings.some(
      ({ position }, state) => open[state] === 1 && position >= low && position <= high,
    );
  });

/** The narrowest stretch of positions that holds every chord; of several the best, then the lowest. */
const inNarrowest = (problem: Problem, choose: Choose): Path | null => {
  const positions = positionsOf(problem);
  const spans = [
    ...new Set(
      positions.flatMap((low) => positions.filter((high) => high >= low).map((high) => high - low)),
    ),
  ].toSorted((a, b) => a - b);
  const span = spans.find((each) => positions.some((low) => holdsAll(problem, low, low + each)));
  if (span === undefined) {
    return null;
  }
  let best: Path | null = null;
  for (const low of positions.filter((each) => holdsAll(problem, each, each + span))) {
    const part = narrowed(problem, (_, { position }) => position >= low && position <= low + span);
    const path = choose(part);
    if (path && (best === null || isBefore(path, best))) {
      best = path;
    }
  }
  return best && { choice: best.choice, costs: [span, ...best.costs] };
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
  const openPairs = Array.from({ length: pairCount }, (_, layer) => {
    const [first, second] = [layers.open(layer), layers.open((layer + 1) % count)];
    return Uint8Array.from({ length: first.length * second.length }, (__, state) =>
      first[Math.floor(state / second.length)] && second[state % second.length] ? 1 : 0,
    );
  });
  const pairs: Layers = {
    count: pairCount,
    width: (layer) => width(layer) * width(layer + 1),
    open: (layer) => openPairs[layer] ?? new Uint8Array(),
    stride: (layer) => width(layer + 2),
    firstNext: (layer, state) => (state % width(layer + 1)) * width(layer + 2),
  };
  const known = new Map<string, Float64Array>();
  const table = (
    from: number,
    kind: string,
    of: (a: number, b: number, c: number) => number,
  ): Float64Array => {
    const names = [0, 1, 2].map((ahead) => slots[(from + ahead) % count]?.chord.name).join(" ");
    const key = `${kind} ${names}`;
    const found = known.get(key);
    if (found) {
      return found;
    }
    const [first, second, third] = [width(from), width(from + 1), width(from + 2)];
    const costs = new Float64Array(first * second * third);
    for (let at = 0; at < costs.length; at += 1) {
      const pair = Math.floor(at / third);
      costs[at] = of(Math.floor(pair / second), pair % second, at % third);
    }
    known.set(key, costs);
    return costs;
  };
  const returns: Criterion = {
    by: "sum",
    costs: (from) => {
      const same = slots[from]?.chord.name === slots[(from + 2) % count]?.chord.name;
      return table(from, "returns", (a, _, c) => (same && a === c ? 1 : 0));
    },
  };
  // A step between pairs pays for the first half of the pair it leaves; the last pair of a row that
  // does not go round pays for both of its halves, since nothing follows it.
  const lastStep = pairCount - 2;
  const inPairs = ({ by, costs }: Criterion, index: number): Criterion => ({
    by,
    costs: (from) => {
      const own = costs(from);
      const next = costs((from + 1) % count);
      const paysTwice = !goesRound && from === lastStep;
      // Costs of one kind of step are one and the same array, which tells the kinds apart.
      return table(from, `${index} ${kindOf(own)} ${paysTwice ? kindOf(next) : ""}`, (a, b, c) => {
        const cost = own[a * width(from + 1) + b] ?? 0;
        return paysTwice ? cost + (next[b * width(from + 2) + c] ?? 0) : cost;
      });
    },
  });
  const kinds = new Map<Float64Array, number>();
  const kindOf = (costs: Float64Array): number => {
    const kind = kinds.get(costs) ?? kinds.size;
    kinds.set(costs, kind);
    return kind;
  };
  const path = choosePath(pairs, [returns, ...criteria.map(inPairs)], goesRound);
  if (!path) {
    return null;
  }
  const firsts = path.choice.map((state, layer) => Math.floor(state / width(layer + 1)));
  const last = path.choice.at(-1) ?? 0;
  const choice = goesRound ? firsts : [...firsts, last % width(count - 1)];
  return { choice, costs: path.costs };
};

const freely: Choose = ({ layers, criteria, goesRound }) => choosePath(layers, criteria, goesRound);

/** The same each time, but for a song too tangled for that. */
const alike: Choose = (problem) => {
  const path = chooseAlike(problem);
  return path === "too-wide" ? freely(problem) : path;
};

/**
 * The best choice of voicings for what a request asks; null where nothing is left to choose. Variety
 * does not heed `alike`, which is its opposite.
 */
export const solve = (
  problem: Problem,
  request: Pick<PlanRequest, "aim" | "alike">,
): Solution | null => {
  const choose = request.alike ? alike : freely;
  const path =
    request.aim === "region"
      ? inNarrowest(problem, choose)
      : request.aim === "variety"
        ? withVariety(problem)
        : choose(problem);
  return path && { voicings: chosen(problem, path), path };
};
