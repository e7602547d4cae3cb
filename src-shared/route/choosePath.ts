/**
 * A layered graph: each layer has some states, each state leads to every state of the next layer.
 */
export type Layers = {
  readonly count: number;
  readonly width: (layer: number) => number;
  /** Whether a path may pass through a state. */
  readonly isOpen: (layer: number, state: number) => boolean;
};

/**
 * What a path is judged by: the sum of its steps' costs, or the worst of them. Costs come row by
 * row: from state a to state b at index a * width(to) + b. Infinity forbids a step. Finite costs
 * must be whole numbers, so that sums are exact whatever their order.
 */
export type Criterion = {
  readonly by: "sum" | "worst";
  readonly costs: (from: number, to: number) => Float64Array;
};

/** One state chosen for each layer, and what the choice comes to by each criterion. */
export type Path = { readonly choice: readonly number[]; readonly costs: readonly number[] };

/** The steps that are still open between each layer and the next, and those out of the last one. */
type Open = {
  readonly steps: readonly Uint8Array[];
  readonly starts: Uint8Array;
  readonly ends: Uint8Array;
};

type Join = (a: number, b: number) => number;

const joins: Readonly<Record<Criterion["by"], Join>> = {
  sum: (a, b) => a + b,
  worst: Math.max,
};

/** What the seam charges from each state of the last layer to the first layer's state `first`. */
const closingCosts = (layers: Layers, { costs }: Criterion, first: number | null): Float64Array => {
  const last = layers.count - 1;
  const closing = new Float64Array(layers.width(last));
  if (first === null || layers.count === 1) {
    return closing;
  }
  const seam = costs(last, 0);
  return closing.map((_, state) => seam[state * layers.width(0) + first] ?? 0);
};

/** Every step that no criterion forbids. */
const everything = (layers: Layers, criteria: readonly Criterion[], first: number | null): Open => {
  const steps = Array.from({ length: Math.max(0, layers.count - 1) }, (_, layer) => {
    const each = criteria.map(({ costs }) => costs(layer, layer + 1));
    const width = layers.width(layer + 1);
    const reachable = Uint8Array.from({ length: width }, (__, state) =>
      layers.isOpen(layer + 1, state) ? 1 : 0,
    );
    return Uint8Array.from({ length: layers.width(layer) * width }, (__, edge) =>
      reachable[edge % width] === 1 &&
      each.every((costs) => (costs[edge] ?? 0) < Number.POSITIVE_INFINITY)
        ? 1
        : 0,
    );
  });
  const closing = criteria.map((criterion) => closingCosts(layers, criterion, first));
  return {
    steps,
    starts: Uint8Array.from({ length: layers.width(0) }, (_, state) =>
      (first === null || first === state) && layers.isOpen(0, state) ? 1 : 0,
    ),
    ends: Uint8Array.from({ length: layers.width(layers.count - 1) }, (_, state) =>
      closing.every((costs) => (costs[state] ?? 0) < Number.POSITIVE_INFINITY) ? 1 : 0,
    ),
  };
};

/** Best value from each state of each layer to the end. */
const valuesToEnd = (
  layers: Layers,
  open: Open,
  costs: (from: number, to: number) => Float64Array,
  last: Float64Array,
  join: Join,
): readonly Float64Array[] => {
  const values: Float64Array[] = new Array(layers.count);
  let next = last.map((value, state) => (open.ends[state] ? value : Number.POSITIVE_INFINITY));
  values[layers.count - 1] = next;
  for (let layer = layers.count - 2; layer >= 0; layer -= 1) {
    const step = costs(layer, layer + 1);
    const isOpen = open.steps[layer] ?? new Uint8Array();
    const own = new Float64Array(layers.width(layer)).fill(Number.POSITIVE_INFINITY);
    for (let a = 0, edge = 0; a < own.length; a += 1) {
      let best = Number.POSITIVE_INFINITY;
      for (let b = 0; b < next.length; b += 1, edge += 1) {
        if (isOpen[edge]) {
          best = Math.min(best, join(step[edge] ?? 0, next[b] ?? 0));
        }
      }
      own[a] = best;
    }
    values[layer] = own;
    next = own;
  }
  return values;
};

/** Leaves open only steps that lie on a path as good as `best`, in place; `open` is the caller's own. */
const keepBest = (
  layers: Layers,
  open: Open,
  costs: (from: number, to: number) => Float64Array,
  toEnd: readonly Float64Array[],
  best: number,
  join: Join,
): void => {
  const first = toEnd[0] ?? new Float64Array();
  let reached = new Float64Array(first.length).fill(Number.POSITIVE_INFINITY);
  for (let a = 0; a < first.length; a += 1) {
    if (open.starts[a] && (first[a] ?? 0) <= best) {
      reached[a] = join === joins.sum ? 0 : Number.NEGATIVE_INFINITY;
    } else {
      open.starts[a] = 0;
    }
  }
  for (let layer = 0; layer < layers.count - 1; layer += 1) {
    const step = costs(layer, layer + 1);
    const isOpen = open.steps[layer] ?? new Uint8Array();
    const after = toEnd[layer + 1] ?? new Float64Array();
    const next = new Float64Array(after.length).fill(Number.POSITIVE_INFINITY);
    for (let a = 0, edge = 0; a < reached.length; a += 1) {
      for (let b = 0; b < after.length; b += 1, edge += 1) {
        const here = join(reached[a] ?? 0, step[edge] ?? 0);
        if (isOpen[edge] && join(here, after[b] ?? 0) <= best) {
          next[b] = Math.min(here, next[b] ?? 0);
        } else {
          isOpen[edge] = 0;
        }
      }
    }
    reached = next;
  }
  const last = toEnd[layers.count - 1] ?? new Float64Array();
  for (let state = 0; state < last.length; state += 1) {
    if (!(join(reached[state] ?? 0, last[state] ?? 0) <= best)) {
      open.ends[state] = 0;
    }
  }
};

/** The first open path, compared state by state from the first layer on. */
const firstOpen = (layers: Layers, open: Open): readonly number[] => {
  let state = open.starts.indexOf(1);
  const choice = [state];
  for (let layer = 0; layer < layers.count - 1; layer += 1) {
    const width = layers.width(layer + 1);
    const row = open.steps[layer]?.subarray(state * width, (state + 1) * width);
    state = row?.indexOf(1) ?? -1;
    choice.push(state);
  }
  return choice;
};

/** The best path from one first state (or any), or null where every path is forbidden. */
const chooseFrom = (
  layers: Layers,
  criteria: readonly Criterion[],
  first: number | null,
): Path | null => {
  const open = everything(layers, criteria, first);
  const totals: number[] = [];
  for (const criterion of criteria) {
    const { by, costs } = criterion;
    const closing = closingCosts(layers, criterion, first);
    const join = joins[by];
    const toEnd = valuesToEnd(layers, open, costs, closing, join);
    const best = (toEnd[0] ?? new Float64Array()).reduce(
      (least, value, state) => (open.starts[state] && value < least ? value : least),
      Number.POSITIVE_INFINITY,
    );
    if (best === Number.POSITIVE_INFINITY) {
      return null;
    }
    totals.push(best);
    keepBest(layers, open, costs, toEnd, best, join);
  }
  return { choice: firstOpen(layers, open), costs: totals };
};

const isLess = (a: readonly number[], b: readonly number[]): boolean => {
  const differs = a.findIndex((value, index) => value !== b[index]);
  return differs >= 0 && (a[differs] ?? 0) < (b[differs] ?? 0);
};

/**
 * The choice of one state a layer that is best by the first criterion, among those by the second,
 * and so on; with `goesRound` the step from the last layer back to the first counts too (where
 * there are two layers or more). Of equal choices it is the first, compared state by state from the
 * first layer on, so the answer depends on nothing else. null where every path is forbidden or a
 * layer has no state; no layer at all is a path that costs nothing.
 */
export const choosePath = (
  layers: Layers,
  criteria: readonly Criterion[],
  goesRound: boolean,
): Path | null => {
  if (layers.count === 0) {
    return { choice: [], costs: criteria.map(() => 0) };
  }
  if (!goesRound || layers.count === 1) {
    return chooseFrom(layers, criteria, null);
  }
  let best: Path | null = null;
  for (let first = 0; first < layers.width(0); first += 1) {
    const path = chooseFrom(layers, criteria, first);
    if (path && (best === null || isLess(path.costs, best.costs))) {
      best = path;
    }
  }
  return best;
};
