import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Criterion, choosePath, type Layers } from "../../../src-shared/route/choosePath.ts";

const allChoices = (widths: readonly number[]): readonly (readonly number[])[] =>
  widths.reduce<readonly (readonly number[])[]>(
    (choices, width) =>
      choices.flatMap((choice) => Array.from({ length: width }, (_, state) => [...choice, state])),
    [[]],
  );

const pathValue = (
  layers: Layers,
  criterion: Criterion,
  choice: readonly number[],
  goesRound: boolean,
): number => {
  const steps: number[] = [];
  const last = layers.count - 1;
  for (let layer = 0; layer < last; layer += 1) {
    const index = (choice[layer] ?? 0) * layers.width(layer + 1) + (choice[layer + 1] ?? 0);
    steps.push(criterion.costs(layer, layer + 1)[index] ?? Number.NaN);
  }
  if (goesRound && layers.count > 1) {
    const index = (choice[last] ?? 0) * layers.width(0) + (choice[0] ?? 0);
    steps.push(criterion.costs(last, 0)[index] ?? Number.NaN);
  }
  return criterion.by === "sum"
    ? steps.reduce((sum, step) => sum + step, 0)
    : steps.reduce((worst, step) => Math.max(worst, step), 0);
};

type Drawn = { readonly layers: Layers; readonly criteria: readonly Criterion[] };

const cost = fc.oneof(
  { arbitrary: fc.integer({ min: 0, max: 5 }), weight: 9 },
  { arbitrary: fc.constant(Number.POSITIVE_INFINITY), weight: 1 },
);

const anyGraph: fc.Arbitrary<Drawn> = fc
  .tuple(
    fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 6 }),
    fc.array(
      fc.array(
        fc.nat(9).map((n) => n === 0),
        { minLength: 4, maxLength: 4 },
      ),
      {
        minLength: 6,
        maxLength: 6,
      },
    ),
  )
  .chain(([widths, closed]) => {
    const layers: Layers = {
      count: widths.length,
      width: (layer) => widths[layer] ?? 0,
      isOpen: (layer, state) => (closed[layer]?.[state] ?? false) === false,
    };
    const anyCriterion = fc
      .tuple(
        fc.constantFrom("sum" as const, "worst" as const),
        fc.array(fc.array(cost, { minLength: 16, maxLength: 16 }), {
          minLength: widths.length,
          maxLength: widths.length,
        }),
      )
      .map(
        ([by, rows]): Criterion => ({
          by,
          costs: (from, to) =>
            Float64Array.from(
              { length: (widths[from] ?? 0) * (widths[to] ?? 0) },
              (_, index) => rows[from]?.[index] ?? 0,
            ),
        }),
      );
    return fc
      .array(anyCriterion, { minLength: 1, maxLength: 3 })
      .map((criteria) => ({ layers, criteria }));
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
          const passable = choice.every((state, layer) => layers.isOpen(layer, state));
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

  test("through no layer at all costs nothing", () => {
    const criteria: readonly Criterion[] = [{ by: "worst", costs: () => new Float64Array() }];
    expect(choosePath({ count: 0, width: () => 0, isOpen: () => true }, criteria, true)).toEqual({
      choice: [],
      costs: [0],
    });
  });

  test("is none where a layer has no state", () => {
    const criteria: readonly Criterion[] = [{ by: "sum", costs: () => new Float64Array(2) }];
    expect(
      choosePath({ count: 2, width: (layer) => 1 - layer, isOpen: () => true }, criteria, false),
    ).toBeNull();
  });
});
