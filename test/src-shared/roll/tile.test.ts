import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { type Tile, tileMeasures } from "../../../src-shared/roll/tile.ts";

const tile = (name: string, measures: number, wanted: boolean): Tile => ({
  measures,
  wanted,
  pattern: { name, meter: "4/4", strokes: [] } satisfies Pattern,
});
const namesOf = (patterns: readonly Pattern[]): readonly string[] =>
  patterns.map(({ name }) => name);

/** Every chain of tiles that fills so many measures, in the order of the list, by plain recursion. */
const everyChain = (count: number, tiles: readonly Tile[]): readonly (readonly Tile[])[] =>
  count === 0
    ? [[]]
    : tiles.flatMap((first) =>
        first.measures > count
          ? []
          : everyChain(count - first.measures, tiles).map((rest) => [first, ...rest]),
      );

const unwantedIn = (chain: readonly Tile[]): number =>
  chain.reduce((sum, { wanted, measures }) => sum + (wanted ? 0 : measures), 0);

describe("a run of measures", () => {
  test("is filled with most of what is wanted, then the fewest pieces, then the earlier first", () => {
    const anyTiles = fc
      .array(fc.tuple(fc.integer({ min: 1, max: 4 }), fc.boolean()), { maxLength: 4 })
      .map((drawn) => [
        ...drawn.map(([measures, wanted], index) => tile(`${index}`, measures, wanted)),
        tile("one", 1, false),
      ]);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7 }), anyTiles, (count, tiles) => {
        // A stable sort: of equally good chains the first in the list's order stays first.
        const [best] = everyChain(count, tiles).toSorted(
          (a, b) => unwantedIn(a) - unwantedIn(b) || a.length - b.length,
        );
        expect(namesOf(tileMeasures(count, tiles))).toEqual(
          (best ?? []).map(({ pattern }) => pattern.name),
        );
      }),
    );
  });

  test("that no tiles fill is our mistake, and says how much is left", () => {
    expect(() => tileMeasures(3, [tile("two", 2, true)])).toThrow("no patterns fill 3 measures");
    expect(() => tileMeasures(1, [])).toThrow("no patterns fill 1 measures");
    expect(tileMeasures(0, [])).toEqual([]);
  });
});
