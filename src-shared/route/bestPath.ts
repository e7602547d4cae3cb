/**
 * A layered graph: each layer has some states, each state leads to every state of the next layer.
 * Costs come row by row: from state a to state b at index a * width(to) + b.
 */
export type Layers = {
  readonly count: number;
  readonly width: (layer: number) => number;
  readonly costs: (from: number, to: number) => Float64Array;
};

/** One state chosen for each layer, and what the choice costs. */
export type Path = { readonly choice: readonly number[]; readonly cost: number };

/** Cost to go from every state of one layer to the end, given that of the next layer. */
const oneLayerBack = (costs: Float64Array, width: number, next: Float64Array): Float64Array => {
  const reach = new Float64Array(width);
  for (let a = 0; a < width; a += 1) {
    let best = Number.POSITIVE_INFINITY;
    const row = a * next.length;
    for (let b = 0; b < next.length; b += 1) {
      const cost = (costs[row + b] ?? 0) + (next[b] ?? 0);
      if (cost < best) {
        best = cost;
      }
    }
    reach[a] = best;
  }
  return reach;
};

/** Cost to go from each state of each layer, last layer first known: `end` for its states. */
const costsToGo = (layers: Layers, end: Float64Array): readonly Float64Array[] => {
  const toGo: Float64Array[] = new Array(layers.count);
  let next = end;
  toGo[layers.count - 1] = end;
  for (let layer = layers.count - 2; layer >= 0; layer -= 1) {
    next = oneLayerBack(layers.costs(layer, layer + 1), layers.width(layer), next);
    toGo[layer] = next;
  }
  return toGo;
};

const firstLeast = (values: ArrayLike<number>): number => {
  let best = 0;
  for (let index = 1; index < values.length; index += 1) {
    if ((values[index] ?? 0) < (values[best] ?? 0)) {
      best = index;
    }
  }
  return best;
};

const follow = (
  layers: Layers,
  toGo: readonly Float64Array[],
  first: number,
): readonly number[] => {
  const choice = [first];
  let state = first;
  for (let layer = 0; layer < layers.count - 1; layer += 1) {
    const next = toGo[layer + 1] ?? new Float64Array();
    const costs = layers.costs(layer, layer + 1);
    const row = state * next.length;
    state = firstLeast(next.map((reach, b) => (costs[row + b] ?? 0) + reach));
    choice.push(state);
  }
  return choice;
};

/**
 * The choice of one state a layer whose steps cost least in sum; with `goesRound` the step from the
 * last layer back to the first counts too (where there are two layers or more). Of equal choices it
 * is the first, compared state by state from the first layer on, so the answer depends on nothing
 * else. Every layer must have a state, and costs must add up without rounding (whole numbers).
 */
export const bestPath = (layers: Layers, goesRound: boolean): Path => {
  if (layers.count === 0) {
    return { choice: [], cost: 0 };
  }
  const last = layers.count - 1;
  if (!goesRound || layers.count === 1) {
    const toGo = costsToGo(layers, new Float64Array(layers.width(last)));
    const start = toGo[0] ?? new Float64Array();
    const first = firstLeast(start);
    return { choice: follow(layers, toGo, first), cost: start[first] ?? 0 };
  }
  const closing = layers.costs(last, 0);
  const firstWidth = layers.width(0);
  const roundFrom = (first: number): readonly Float64Array[] =>
    costsToGo(
      layers,
      Float64Array.from(
        { length: layers.width(last) },
        (_, s) => closing[s * firstWidth + first] ?? 0,
      ),
    );
  const totals = Array.from(
    { length: firstWidth },
    (_, first) => roundFrom(first)[0]?.[first] ?? 0,
  );
  const first = firstLeast(totals);
  return { choice: follow(layers, roundFrom(first), first), cost: totals[first] ?? 0 };
};
