import { compareInOrder } from "./compareInOrder.ts";

/**
 * A layered graph. From each state of a layer steps lead to a run of neighbouring states of the next
 * one: `stride` of them, from `firstNext` on. The last layer's steps lead round to the first layer.
 */
export type Layers = {
  readonly count: number;
  readonly width: (layer: number) => number;
  /** 1 for each state of a layer that a path may pass through, 0 for the others. */
  readonly open: (layer: number) => Uint8Array;
  readonly stride: (layer: number) => number;
  readonly firstNext: (layer: number, state: number) => number;
};

/**
 * What a path is judged by: the sum of its steps' costs, or the worst of them. Costs come state by
 * state, for each the steps it has: the k-th step of state a is at a * stride + k. Costs must be
 * whole numbers, so that sums are exact whatever their order.
 */
export type Criterion = {
  readonly by: "sum" | "worst";
  readonly costs: (layer: number) => Float64Array;
};

/** One state chosen for each layer, and what the choice comes to by each criterion. */
export type Path = { readonly choice: readonly number[]; readonly costs: readonly number[] };

/** For each layer, the steps that are still good enough; null where all are. */
type Kept = readonly (Uint8Array | null)[];

const NEVER: number = Number.POSITIVE_INFINITY;

/** What the seam charges from each state of the last layer to state `first`; NEVER where none leads. */
const seamCosts = (layers: Layers, { costs }: Criterion, first: number): Float64Array => {
  const last = layers.count - 1;
  const stride = layers.stride(last);
  const seam = costs(last);
  return Float64Array.from({ length: layers.width(last) }, (_, state) => {
    const step = first - layers.firstNext(last, state);
    return step >= 0 && step < stride ? (seam[state * stride + step] ?? NEVER) : NEVER;
  });
};

/** The best value from each state of each layer to the end; NEVER where no path leads there. */
const valuesToEnd = (
  layers: Layers,
  { by, costs }: Criterion,
  kept: Kept,
  last: Float64Array,
): readonly Float64Array[] => {
  const isSum = by === "sum";
  const values: Float64Array[] = new Array(layers.count);
  const lastOpen = layers.open(layers.count - 1);
  let next = last.map((value, state) => (lastOpen[state] ? value : NEVER));
  values[layers.count - 1] = next;
  for (let layer = layers.count - 2; layer >= 0; layer -= 1) {
    const step = costs(layer);
    const mask = kept[layer] ?? null;
    const stride = layers.stride(layer);
    const open = layers.open(layer);
    const own = new Float64Array(layers.width(layer)).fill(NEVER);
    for (let a = 0; a < own.length; a += 1) {
      if (!open[a]) {
        continue;
      }
      const base = layers.firstNext(layer, a);
      const row = a * stride;
      let best = NEVER;
      for (let k = 0; k < stride; k += 1) {
        if (mask === null || mask[row + k]) {
          const after = next[base + k] ?? NEVER;
          const cost = step[row + k] ?? NEVER;
          const value = isSum ? cost + after : Math.max(cost, after);
          best = Math.min(best, value);
        }
      }
      own[a] = best;
    }
    values[layer] = own;
    next = own;
  }
  return values;
};

/** The steps that lie on a path as good as `best`. */
const stepsOfBest = (
  layers: Layers,
  { by, costs }: Criterion,
  kept: Kept,
  toEnd: readonly Float64Array[],
  best: number,
): Kept => {
  const isSum = by === "sum";
  let reached: Float64Array = (toEnd[0] ?? new Float64Array()).map((value) =>
    value <= best ? (isSum ? 0 : Number.NEGATIVE_INFINITY) : NEVER,
  );
  return Array.from({ length: layers.count - 1 }, (_, layer) => {
    const step = costs(layer);
    const before = kept[layer] ?? null;
    const stride = layers.stride(layer);
    const after = toEnd[layer + 1] ?? new Float64Array();
    const next = new Float64Array(after.length).fill(NEVER);
    const mask = new Uint8Array(reached.length * stride);
    for (let a = 0; a < reached.length; a += 1) {
      const so = reached[a] ?? NEVER;
      const base = layers.firstNext(layer, a);
      for (let k = 0; k < stride && so < NEVER; k += 1) {
        const edge = a * stride + k;
        const cost = step[edge] ?? NEVER;
        const here = isSum ? so + cost : Math.max(so, cost);
        const whole = isSum
          ? here + (after[base + k] ?? NEVER)
          : Math.max(here, after[base + k] ?? NEVER);
        if (whole <= best && whole < NEVER && (before === null || before[edge])) {
          mask[edge] = 1;
          next[base + k] = Math.min(here, next[base + k] ?? NEVER);
        }
      }
    }
    reached = next;
    return mask;
  });
};

/** The first path as good as `best`, compared state by state from the first layer on. */
const firstOfBest = (
  layers: Layers,
  { by, costs }: Criterion,
  kept: Kept,
  toEnd: readonly Float64Array[],
  best: number,
): readonly number[] => {
  const isSum = by === "sum";
  let state = (toEnd[0] ?? new Float64Array()).findIndex((value) => value <= best);
  let so = isSum ? 0 : Number.NEGATIVE_INFINITY;
  const choice = [state];
  for (let layer = 0; layer < layers.count - 1; layer += 1) {
    const step = costs(layer);
    const mask = kept[layer] ?? null;
    const stride = layers.stride(layer);
    const base = layers.firstNext(layer, state);
    const row = state * stride;
    for (let k = 0; k < stride; k += 1) {
      const cost = step[row + k] ?? NEVER;
      const here = isSum ? so + cost : Math.max(so, cost);
      const after = toEnd[layer + 1]?.[base + k] ?? NEVER;
      const whole = isSum ? here + after : Math.max(here, after);
      if (whole <= best && (mask === null || mask[row + k])) {
        state = base + k;
        so = here;
        break;
      }
    }
    choice.push(state);
  }
  return choice;
};

const only = (values: Float64Array, first: number | null): Float64Array =>
  first === null ? values : values.map((value, state) => (state === first ? value : NEVER));

/** The best path from one first state (or any), or null where there is none. */
const chooseFrom = (
  layers: Layers,
  criteria: readonly Criterion[],
  first: number | null,
): Path | null => {
  let kept: Kept = [];
  let choice: readonly number[] = [];
  const totals: number[] = [];
  for (const [index, criterion] of criteria.entries()) {
    const closing =
      first === null || layers.count === 1
        ? new Float64Array(layers.width(layers.count - 1))
        : seamCosts(layers, criterion, first);
    const values = valuesToEnd(layers, criterion, kept, closing);
    const toEnd = [only(values[0] ?? new Float64Array(), first), ...values.slice(1)];
    const best = (toEnd[0] ?? new Float64Array()).reduce((a, b) => Math.min(a, b), NEVER);
    if (best === NEVER) {
      return null;
    }
    totals.push(best);
    if (index === criteria.length - 1) {
      choice = firstOfBest(layers, criterion, kept, toEnd, best);
    } else {
      kept = stepsOfBest(layers, criterion, kept, toEnd, best);
    }
  }
  return { choice, costs: totals };
};

/** Whether one path is better than another, or as good and earlier in order. */
export const isBefore = (a: Path, b: Path): boolean =>
  (compareInOrder(a.costs, b.costs) || compareInOrder(a.choice, b.choice)) < 0;

/**
 * The choice of one state a layer that is best by the first criterion, among those by the second,
 * and so on; with `goesRound` the step from the last layer back to the first counts too (where
 * there are two layers or more; its costs by the first criterion must not be below 0). Of equal
 * choices it is the first, compared state by state from the first layer on, so the answer depends on
 * nothing else. null where no path leads through; no layer at all is a path that costs nothing.
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
  if (!goesRound || layers.count === 1) {
    return chooseFrom(layers, criteria, null);
  }
  // Without the seam a path from a first state can only be better: what cannot win is not tried.
  const free = new Float64Array(layers.width(layers.count - 1));
  const atLeast = valuesToEnd(layers, foremost, [], free)[0] ?? new Float64Array();
  const firsts = [...atLeast.keys()].filter((state) => (atLeast[state] ?? NEVER) < NEVER);
  let best: Path | null = null;
  for (const first of firsts.toSorted((a, b) => (atLeast[a] ?? 0) - (atLeast[b] ?? 0))) {
    if (best !== null && (atLeast[first] ?? 0) > (best.costs[0] ?? 0)) {
      break;
    }
    const path = chooseFrom(layers, criteria, first);
    if (path && (best === null || isBefore(path, best))) {
      best = path;
    }
  }
  return best;
};
