import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { choosePath } from "../../../src-shared/route/choosePath.ts";
import type { Criterion, Layers } from "../../../src-shared/route/layers.ts";

const allChoices = (widths: readonly number[]): readonly (readonly number[])[] =>
  widths.reduce<readonly (readonly number[])[]>(
    (choices, width) =>
      choices.flatMap((choice) => Array.from({ length: width }, (_, state) => [...choice, state])),
    [[]],
  );

/** What a step costs; Infinity where no step leads from the one state to the other. */
const stepOf = (
  layers: Layers,
  criterion: Criterion,
  layer: number,
  from: number,
  to: number,
): number => {
  const step = to - layers.firstNext(layer, from);
  const stride = layers.stride(layer);
  return step >= 0 && step < stride
    ? (criterion.costs(layer)[from * stride + step] ?? Number.NaN)
    : Number.POSITIVE_INFINITY;
};

const pathValue = (
  layers: Layers,
  criterion: Criterion,
  choice: readonly number[],
  goesRound: boolean,
): number => {
  const steps: number[] = [];
  const last = layers.count - 1;
  for (let layer = 0; layer < last; layer += 1) {
    steps.push(stepOf(layers, criterion, layer, choice[layer] ?? 0, choice[layer + 1] ?? 0));
  }
  if (goesRound && layers.count > 1) {
    steps.push(stepOf(layers, criterion, last, choice[last] ?? 0, choice[0] ?? 0));
  }
  return criterion.by === "sum"
    ? steps.reduce((sum, step) => sum + step, 0)
    : steps.reduce((worst, step) => Math.max(worst, step), 0);
};

type Drawn = { readonly layers: Layers; readonly criteria: readonly Criterion[] };

/** Each state leads to all states of the next layer, or, where `narrow`, to one run of them. */
const anyGraph: fc.Arbitrary<Drawn> = fc
  .record({
    widths: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 6 }),
    closed: fc.array(
      fc.array(
        fc.nat(9).map((n) => n === 0),
        { minLength: 4, maxLength: 4 },
      ),
      { minLength: 6, maxLength: 6 },
    ),
    narrow: fc.boolean(),
    kinds: fc.array(fc.constantFrom("sum" as const, "worst" as const), {
      minLength: 1,
      maxLength: 3,
    }),
    values: fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 16, maxLength: 60 }),
  })
  .map(({ widths, closed, narrow, kinds, values }) => {
    const widthOf = (layer: number) => widths[layer % widths.length] ?? 1;
    const stride = (layer: number) =>
      narrow ? Math.min(2, widthOf(layer + 1)) : widthOf(layer + 1);
    const layers: Layers = {
      count: widths.length,
      width: widthOf,
      open: (layer) =>
        Uint8Array.from({ length: widthOf(layer) }, (_, s) => (closed[layer]?.[s] ? 0 : 1)),
      stride,
      firstNext: (layer, state) => state % (widthOf(layer + 1) - stride(layer) + 1),
    };
    const criteria = kinds.map(
      (by, kind): Criterion => ({
        by,
        costs: (layer) =>
          Float64Array.from(
            { length: widthOf(layer) * stride(layer) },
            (_, index) => values[(index * 7 + layer * 13 + kind * 29) % values.length] ?? 0,
          ),
      }),
    );
    return { layers, criteria };
  });

const compare = (a: readonly number[], b: readonly number[]): number => {
  const differs = a.findIndex((value, index) => value !== b[index]);
  return differs < 0 ? 0 : (a[differs] ?? 0) - (b[differs] ?? 0);
};

describe("the chosen path", () => {
  test("is the first of the best among all paths, criterion after criterion, round or not", () => {
    fc.assert(
      fc.property(anyGraph, fc.boolean(), ({ layers, criteria }, goesRound) => {
        const widths = Array.from({ length: layers.count }, (_, layer) => layers.width(layer));
        let best: { choice: readonly number[]; costs: readonly number[] } | null = null;
        for (const choice of allChoices(widths)) {
          const costs = criteria.map((each) => pathValue(layers, each, choice, goesRound));
          const passable = choice.every((state, layer) => layers.open(layer)[state] === 1);
          if (
            passable &&
            costs.every(Number.isFinite) &&
            (best === null || compare(costs, best.costs) < 0)
          ) {
            best = { choice, costs };
          }
        }
        const found = choosePath(layers, criteria, goesRound);
        expect(found?.choice ?? null).toEqual(best?.choice ?? null);
        if (found && best) {
          expect(found.costs.map((value) => Math.max(0, value))).toEqual(best.costs);
        }
      }),
      { numRuns: 2000 },
    );
  });

  const criterion: Criterion = { by: "worst", costs: () => new Float64Array(2) };

  test("through no layer at all costs nothing", () => {
    const none: Layers = {
      count: 0,
      width: () => 0,
      open: () => new Uint8Array(),
      stride: () => 0,
      firstNext: () => 0,
    };
    expect(choosePath(none, [criterion], true)).toEqual({ choice: [], costs: [0] });
  });

  test("is none where a layer has no state", () => {
    const bare: Layers = {
      count: 2,
      width: (layer) => 1 - layer,
      open: (layer) => new Uint8Array(1 - layer).fill(1),
      stride: (layer) => layer,
      firstNext: () => 0,
    };
    expect(choosePath(bare, [criterion], false)).toBeNull();
  });
});
