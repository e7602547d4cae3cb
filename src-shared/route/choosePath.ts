import { type Criterion, isBefore, type Layers, type Path } from "./layers.ts";
import {
  firstOfBest,
  type Graph,
  graphOf,
  type Kept,
  keptWithin,
  NEVER,
  seamCosts,
  valuesToEnd,
} from "./sweep.ts";

/** The best path from one first state, round to which it then leads, or from any; null where none. */
const chooseFrom = (
  graph: Graph,
  criteria: readonly Criterion[],
  first: number | null,
): Path | null => {
  const { layers, stateAt } = graph;
  let kept: Kept = null;
  let choice: readonly number[] = [];
  const totals: number[] = [];
  for (const [index, criterion] of criteria.entries()) {
    const closing =
      first === null
        ? new Float64Array(layers.width(layers.count - 1))
        : seamCosts(graph, criterion, first);
    const toEnd = valuesToEnd(graph, criterion, kept, closing);
    const firsts = toEnd.subarray(0, stateAt[1]);
    if (first !== null) {
      const own = firsts[first] ?? NEVER;
      firsts.fill(NEVER);
      firsts[first] = own;
    }
    const best = firsts.reduce((a, b) => Math.min(a, b), NEVER);
    if (best === NEVER) {
      return null;
    }
    totals.push(best);
    if (index === criteria.length - 1) {
      choice = firstOfBest(graph, criterion, kept, toEnd, best);
    } else {
      kept = keptWithin(graph, criterion, kept, first, toEnd, best);
    }
  }
  return { choice, costs: totals };
};

/**
 * The choice of one state a layer that is best by the first criterion, among those by the second,
 * and so on; with `goesRound` the step from the last layer back to the first counts too (where
 * there are two layers or more). Of equal choices it is the first, compared state by state from the
 * first layer on, so the answer depends on nothing else. null where no path leads through; no layer
 * at all is a path that costs nothing.
 */
export const choosePath = (
  layers: Layers,
  criteria: readonly Criterion[],
  goesRound: boolean,
): Path | null => {
  const [foremost] = criteria;
  if (layers.count === 0 || !foremost) {
    return { choice: [], costs: criteria.map(() => 0) };
  }
  const graph = graphOf(layers);
  if (!goesRound || layers.count === 1) {
    return chooseFrom(graph, criteria, null);
  }
  // With the cheapest way round for each last state, whatever first state that leads to, a path can
  // only be better: first states that cannot win even so are not tried.
  const closing = seamCosts(graph, foremost, null);
  const atLeast = valuesToEnd(graph, foremost, null, closing).subarray(0, graph.stateAt[1]);
  const firsts = [...atLeast.keys()].filter((state) => (atLeast[state] ?? NEVER) < NEVER);
  let best: Path | null = null;
  for (const first of firsts.toSorted((a, b) => (atLeast[a] ?? 0) - (atLeast[b] ?? 0))) {
    if (best !== null && (atLeast[first] ?? 0) > (best.costs[0] ?? 0)) {
      break;
    }
    const path = chooseFrom(graph, criteria, first);
    if (path && (best === null || isBefore(path, best))) {
      best = path;
    }
  }
  return best;
};
