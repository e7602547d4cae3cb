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

/** Whether one path is better than another, or as good and earlier in order. */
export const isBefore = (a: Path, b: Path): boolean =>
  (compareInOrder(a.costs, b.costs) || compareInOrder(a.choice, b.choice)) < 0;
