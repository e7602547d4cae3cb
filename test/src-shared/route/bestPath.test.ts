import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { bestPath, type Layers } from "../../../src-shared/route/bestPath.ts";
import { fret } from "../../../src-shared/units.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { chordByTonal } from "../../laws/anyHeldSong.ts";

/** All choices of one state a layer, the first state of each layer first. */
const allChoices = (widths: readonly number[]): readonly (readonly number[])[] =>
  widths.reduce<readonly (readonly number[])[]>(
    (choices, width) =>
      choices.flatMap((choice) => Array.from({ length: width }, (_, state) => [...choice, state])),
    [[]],
  );

const costOf = (layers: Layers, choice: readonly number[], goesRound: boolean): number => {
  let cost = 0;
  const last = layers.count - 1;
  for (let layer = 0; layer < last; layer += 1) {
    const row = (choice[layer] ?? 0) * layers.width(layer + 1);
    cost += layers.costs(layer, layer + 1)[row + (choice[layer + 1] ?? 0)] ?? Number.NaN;
  }
  if (goesRound && layers.count > 1) {
    cost +=
      layers.costs(last, 0)[(choice[last] ?? 0) * layers.width(0) + (choice[0] ?? 0)] ?? Number.NaN;
  }
  return cost;
};

const anyLayers: fc.Arbitrary<Layers> = fc
  .array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 6 })
  .chain((widths) =>
    fc
      .array(fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 16, maxLength: 16 }), {
        minLength: widths.length,
        maxLength: widths.length,
      })
      .map((costs) => ({
        count: widths.length,
        width: (layer: number) => widths[layer] ?? 0,
        costs: (from: number, to: number) =>
          Float64Array.from(
            { length: (widths[from] ?? 0) * (widths[to] ?? 0) },
            (_, index) => costs[from]?.[index] ?? 0,
          ),
      })),
  );

describe("the best path through layers", () => {
  test("is the first of the cheapest among all paths, round or not", () => {
    fc.assert(
      fc.property(anyLayers, fc.boolean(), (layers, goesRound) => {
        const widths = Array.from({ length: layers.count }, (_, layer) => layers.width(layer));
        const choices = allChoices(widths);
        const costs = choices.map((choice) => costOf(layers, choice, goesRound));
        const least = Math.min(...costs);
        const found = bestPath(layers, goesRound);
        expect(found.cost).toBe(least);
        expect(found.choice).toEqual(choices[costs.indexOf(least)]);
      }),
      { numRuns: 500 },
    );
  });

  test("through no layer at all costs nothing", () => {
    const none: Layers = { count: 0, width: () => 0, costs: () => new Float64Array() };
    expect(bestPath(none, true)).toEqual({ choice: [], cost: 0 });
  });
});

describe("frets alone as cost", () => {
  // Exhaustive oracle over the three major and three minor closed shapes in open G, lowest fret at
  // least 1, highest at most 17, cost = change of lowest fret; computed independently, unique optima.
  const songs: readonly (readonly [readonly string[], string, number])[] = [
    [["G", "C", "D", "G"], "D7 F8 barre7 D7", 2],
    [["G", "C", "G", "D", "G"], "D7 F8 D7 barre7 D7", 2],
    [["C", "F", "G", "C"], "D12 F13 barre12 D12", 2],
    [["G", "Em", "Am", "D"], "barre12 F12 barre13 D14", 2],
  ];
  for (const [names, path, cost] of songs) {
    test(`finds the known path for ${names.join(" ")}`, () => {
      const neck = neckFor(tunings[0], fret(0));
      const layers = names.map((name) =>
        voicingsOf(chordByTonal(name.replace("m", ""), name.endsWith("m") ? "m" : ""), neck, {
          low: fret(1),
          high: fret(17),
        }),
      );
      const found = bestPath(
        {
          count: layers.length,
          width: (layer) => layers[layer]?.length ?? 0,
          costs: (from, to) =>
            Float64Array.from(
              (layers[from] ?? []).flatMap((a) =>
                (layers[to] ?? []).map((b) => Math.abs(b.position - a.position)),
              ),
            ),
        },
        false,
      );
      const said = found.choice.map((state, layer) => {
        const voicing = layers[layer]?.[state];
        return `${voicing?.shape}${voicing?.position}`;
      });
      expect(said.join(" ")).toBe(path);
      expect(found.cost).toBe(cost);
    });
  }
});
