import type { Criterion, Layers } from "./layers.ts";

/** The value of what no path leads to. */
export const NEVER: number = Number.POSITIVE_INFINITY;

/**
 * A layered graph whose states and steps are counted through from the first layer to the last, so
 * that one array holds a value for each: `stateAt` and `stepAt` say where a layer's own begin, and
 * after the last layer how many there are. Steps round from the last layer are not among them.
 */
export type Graph = {
  readonly layers: Layers;
  readonly stateAt: Int32Array;
  readonly stepAt: Int32Array;
};

/**
 * 1 for each step of a graph that a path may still take, and for each state from which it may take
 * any (the last layer's are not told); null where it may take all.
 */
export type Kept = { readonly steps: Uint8Array; readonly states: Uint8Array } | null;

/** Counts a layered graph through; one layer at least. */
export const graphOf = (layers: Layers): Graph => {
  const stateAt = new Int32Array(layers.count + 1);
  const stepAt = new Int32Array(layers.count);
  for (let layer = 0; layer < layers.count; layer += 1) {
    const width = layers.width(layer);
    stateAt[layer + 1] = (stateAt[layer] ?? 0) + width;
    if (layer + 1 < layers.count) {
      stepAt[layer + 1] = (stepAt[layer] ?? 0) + width * layers.stride(layer);
    }
  }
  return { layers, stateAt, stepAt };
};

/** The best value from each state to the end, where `closing` is what each last state still pays. */
export const valuesToEnd = (
  { layers, stateAt, stepAt }: Graph,
  { by, costs }: Criterion,
  kept: Kept,
  closing: Float64Array,
): Float64Array => {
  const isSum = by === "sum";
  const last = layers.count - 1;
  const values = new Float64Array(stateAt[layers.count] ?? 0).fill(NEVER);
  const lastOpen = layers.open(last);
  for (let state = 0; state < closing.length; state += 1) {
    if (lastOpen[state] === 1) {
      values[(stateAt[last] ?? 0) + state] = closing[state] ?? NEVER;
    }
  }
  for (let layer = last - 1; layer >= 0; layer -= 1) {
    const step = costs(layer);
    const stride = layers.stride(layer);
    const open = layers.open(layer);
    const own = stateAt[layer] ?? 0;
    const next = stateAt[layer + 1] ?? 0;
    const width = next - own;
    const firstStep = stepAt[layer] ?? 0;
    for (let a = 0; a < width; a += 1) {
      if (open[a] !== 1 || (kept !== null && kept.states[own + a] !== 1)) {
        continue;
      }
      const reached = next + layers.firstNext(layer, a);
      const row = a * stride;
      let best = NEVER;
      for (let k = 0; k < stride; k += 1) {
        if (kept === null || kept.steps[firstStep + row + k] === 1) {
          const after = values[reached + k] ?? NEVER;
          const cost = step[row + k] ?? NEVER;
          const value = isSum ? cost + after : Math.max(cost, after);
          if (value < best) {
            best = value;
          }
        }
      }
      values[own + a] = best;
    }
  }
  return values;
};

/** The best value from any state of the first layer to each state, whether that is open or not. */
export const valuesFromStart = (
  { layers, stateAt, stepAt }: Graph,
  { by, costs }: Criterion,
  kept: Kept,
): Float64Array => {
  const isSum = by === "sum";
  const values = new Float64Array(stateAt[layers.count] ?? 0).fill(NEVER);
  values.fill(isSum ? 0 : Number.NEGATIVE_INFINITY, 0, stateAt[1]);
  for (let layer = 0; layer < layers.count - 1; layer += 1) {
    const step = costs(layer);
    const stride = layers.stride(layer);
    const open = layers.open(layer);
    const own = stateAt[layer] ?? 0;
    const next = stateAt[layer + 1] ?? 0;
    const width = next - own;
    const firstStep = stepAt[layer] ?? 0;
    for (let a = 0; a < width; a += 1) {
      const so = values[own + a] ?? NEVER;
      if (open[a] !== 1 || so === NEVER) {
        continue;
      }
      const reached = next + layers.firstNext(layer, a);
      const row = a * stride;
      for (let k = 0; k < stride; k += 1) {
        if (kept === null || kept.steps[firstStep + row + k] === 1) {
          const cost = step[row + k] ?? NEVER;
          const value = isSum ? so + cost : Math.max(so, cost);
          if (value < (values[reached + k] ?? NEVER)) {
            values[reached + k] = value;
          }
        }
      }
    }
  }
  return values;
};

/**
 * What lies on a path no worse than `most`, from state `first` of the first layer or from any; told
 * from the values to the end.
 */
export const keptWithin = (
  { layers, stateAt, stepAt }: Graph,
  { by, costs }: Criterion,
  kept: Kept,
  first: number | null,
  toEnd: Float64Array,
  most: number,
): Kept => {
  const isSum = by === "sum";
  const nothing = isSum ? 0 : Number.NEGATIVE_INFINITY;
  const reached = new Float64Array(stateAt[layers.count] ?? 0).fill(NEVER);
  if (first === null) {
    reached.fill(nothing, 0, stateAt[1]);
  } else {
    reached[first] = nothing;
  }
  const steps = new Uint8Array(stepAt[layers.count - 1] ?? 0);
  const states = new Uint8Array(reached.length);
  for (let layer = 0; layer < layers.count - 1; layer += 1) {
    const step = costs(layer);
    const stride = layers.stride(layer);
    const own = stateAt[layer] ?? 0;
    const next = stateAt[layer + 1] ?? 0;
    const width = next - own;
    const firstStep = stepAt[layer] ?? 0;
    for (let a = 0; a < width; a += 1) {
      const so = reached[own + a] ?? NEVER;
      const rest = toEnd[own + a] ?? NEVER;
      // Most states lie on no such path: their steps need not be looked at.
      if (so === NEVER || rest === NEVER || (isSum ? so + rest : Math.max(so, rest)) > most) {
        continue;
      }
      states[own + a] = 1;
      const base = next + layers.firstNext(layer, a);
      const row = a * stride;
      for (let k = 0; k < stride; k += 1) {
        const place = firstStep + row + k;
        const cost = step[row + k] ?? NEVER;
        const here = isSum ? so + cost : Math.max(so, cost);
        const after = toEnd[base + k] ?? NEVER;
        const whole = isSum ? here + after : Math.max(here, after);
        if (whole <= most && whole !== NEVER && (kept === null || kept.steps[place] === 1)) {
          steps[place] = 1;
          reached[base + k] = Math.min(here, reached[base + k] ?? NEVER);
        }
      }
    }
  }
  return { steps, states };
};

/** The first path as good as `best`, compared state by state from the first layer on. */
export const firstOfBest = (
  { layers, stateAt, stepAt }: Graph,
  { by, costs }: Criterion,
  kept: Kept,
  toEnd: Float64Array,
  best: number,
): readonly number[] => {
  const isSum = by === "sum";
  let state = toEnd.findIndex((value) => value <= best);
  let so = isSum ? 0 : Number.NEGATIVE_INFINITY;
  const choice = [state];
  for (let layer = 0; layer < layers.count - 1; layer += 1) {
    const step = costs(layer);
    const stride = layers.stride(layer);
    const base = layers.firstNext(layer, state);
    const next = (stateAt[layer + 1] ?? 0) + base;
    const row = state * stride;
    const firstStep = (stepAt[layer] ?? 0) + row;
    for (let k = 0; k < stride; k += 1) {
      const cost = step[row + k] ?? NEVER;
      const after = toEnd[next + k] ?? NEVER;
      const here = isSum ? so + cost : Math.max(so, cost);
      const whole = isSum ? here + after : Math.max(here, after);
      if (whole <= best && (kept === null || kept.steps[firstStep + k] === 1)) {
        state = base + k;
        so = here;
        break;
      }
    }
    choice.push(state);
  }
  return choice;
};

/**
 * What the way round charges each state of the last layer: to state `first` of the first layer, or
 * where that is null to the open one that is reached at the least cost. NEVER where none is.
 */
export const seamCosts = (
  { layers }: Graph,
  { costs }: Criterion,
  first: number | null,
): Float64Array => {
  const last = layers.count - 1;
  const stride = layers.stride(last);
  const seam = costs(last);
  const open = layers.open(0);
  const least = new Float64Array(layers.width(last)).fill(NEVER);
  for (let state = 0; state < least.length; state += 1) {
    const base = layers.firstNext(last, state);
    for (let k = 0; k < stride; k += 1) {
      if (first === null ? open[base + k] === 1 : base + k === first) {
        least[state] = Math.min(least[state] ?? NEVER, seam[state * stride + k] ?? NEVER);
      }
    }
  }
  return least;
};
