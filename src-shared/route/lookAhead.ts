import type { Criterion, Layers } from "./layers.ts";
import type { Problem } from "./problem.ts";

/**
 * A problem told so that a step sees a chord that comes back after one other: where the slots on
 * both sides of one have the same chord, a state of its layer is its own voicing together with the
 * next slot's. Everywhere else it is the slot's voicing alone, as in the problem itself.
 */
export type Ahead = {
  /** A chord that comes back in the same voicing costs 1, before all else. */
  readonly criteria: readonly Criterion[];
  /** The layers, with what is open in the problem or a narrowed one. */
  readonly layersOf: (problem: Problem) => Layers;
  /** How many states of a layer have one and the same voicing of the slot, one after the other. */
  readonly fan: (layer: number) => number;
};

/** A fresh array for each different list of parts, the same one for the same list. */
const byParts = (): ((parts: string, size: number, of: (at: number) => number) => Float64Array) => {
  const known = new Map<string, Float64Array>();
  return (parts, size, of) => {
    const made = known.get(parts) ?? new Float64Array(size);
    if (!known.has(parts)) {
      for (let at = 0; at < size; at += 1) {
        made[at] = of(at);
      }
      known.set(parts, made);
    }
    return made;
  };
};

/** Looks ahead in a problem; null where no chord comes back after one other. */
export const lookAhead = ({ slots, layers, criteria, goesRound }: Problem): Ahead | null => {
  const { count, width } = layers;
  const chordAt = (slot: number): string | undefined => slots[(slot + count) % count]?.chord.name;
  const isInBetween = (slot: number): boolean =>
    count > 2 &&
    (goesRound || (slot > 0 && slot < count - 1)) &&
    chordAt(slot - 1) === chordAt(slot + 1);
  const fans = slots.map((_, slot) => (isInBetween(slot) ? width((slot + 1) % count) : 1));
  const inBetween = slots.map((_, slot) => isInBetween(slot));
  if (!inBetween.includes(true)) {
    return null;
  }
  const fan = (layer: number): number => fans[layer % count] ?? 1;
  const states = (layer: number): number => width(layer % count) * fan(layer);
  const stride = (layer: number): number => (inBetween[layer] ? fan(layer + 1) : states(layer + 1));
  const table = byParts();
  const returns: Criterion = {
    by: "sum",
    costs: (layer) => {
      const [own, next, steps] = [fan(layer), fan(layer + 1), stride(layer)];
      const size = states(layer) * steps;
      return inBetween[(layer + 1) % count]
        ? table(`same ${own} ${next} ${steps} ${size}`, size, (at) =>
            Math.floor(at / steps / own) === at % next ? 1 : 0,
          )
        : table(`none ${size}`, size, () => 0);
    },
  };
  const kinds = new Map<Float64Array, number>();
  // Costs of one kind of step are one and the same array, which tells the kinds apart.
  const kindOf = (costs: Float64Array): number => {
    const kind = kinds.get(costs) ?? kinds.size;
    kinds.set(costs, kind);
    return kind;
  };
  const spread = ({ by, costs }: Criterion): Criterion => ({
    by,
    costs: (layer) => {
      const plain = costs(layer);
      const [own, next, steps] = [fan(layer), fan(layer + 1), stride(layer)];
      if (own === 1 && next === 1) {
        return plain;
      }
      const size = states(layer) * steps;
      const reached = width((layer + 1) % count);
      return table(`${kindOf(plain)} ${own} ${next} ${inBetween[layer]}`, size, (at) => {
        const state = Math.floor(at / steps);
        const to = inBetween[layer] ? state % own : Math.floor((at % steps) / next);
        return plain[Math.floor(state / own) * reached + to] ?? 0;
      });
    },
  });
  const layersOf = (problem: Problem): Layers => {
    const open = slots.map((_, slot) => {
      const own = problem.layers.open(slot);
      if (!inBetween[slot]) {
        return own;
      }
      const next = problem.layers.open((slot + 1) % count);
      const both = new Uint8Array(own.length * next.length);
      for (let at = 0; at < both.length; at += 1) {
        const state = Math.floor(at / next.length);
        both[at] = (own[state] ?? 0) & (next[at % next.length] ?? 0);
      }
      return both;
    });
    return {
      count,
      width: states,
      open: (layer) => open[layer] ?? new Uint8Array(),
      stride,
      firstNext: (layer, state) => (inBetween[layer] ? (state % fan(layer)) * fan(layer + 1) : 0),
    };
  };
  return { criteria: [returns, ...criteria.map(spread)], layersOf, fan };
};
