import type { Criterion, Layers } from "./layers.ts";
import {
  graphOf,
  type Kept,
  keptWithin,
  seamCosts,
  valuesFromStart,
  valuesToEnd,
} from "./sweep.ts";

/**
 * For each criterion, and in it for each state (counted through from the first layer on), what any
 * path through that state comes to at least: by the second criterion among paths that come to no
 * more than the first of `costs` by the first one, and so on. Infinity where no such path leads. A
 * path that goes round may come to more, since its way back is taken at its cheapest. One layer at
 * least.
 */
export const leastThrough = (
  layers: Layers,
  criteria: readonly Criterion[],
  goesRound: boolean,
  costs: readonly number[],
): readonly Float64Array[] => {
  const graph = graphOf(layers);
  let kept: Kept = null;
  return criteria.map((criterion, index) => {
    const closing =
      goesRound && layers.count > 1
        ? seamCosts(graph, criterion, null)
        : new Float64Array(layers.width(layers.count - 1));
    const toEnd = valuesToEnd(graph, criterion, kept, closing);
    const fromStart = valuesFromStart(graph, criterion, kept);
    if (index < criteria.length - 1) {
      kept = keptWithin(graph, criterion, kept, null, toEnd, costs[index] ?? 0);
    }
    const isSum = criterion.by === "sum";
    for (let state = 0; state < toEnd.length; state += 1) {
      const [before, after] = [fromStart[state] ?? 0, toEnd[state] ?? 0];
      fromStart[state] = isSum ? before + after : Math.max(before, after);
    }
    return fromStart;
  });
};
