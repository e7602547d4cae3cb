import type { Pattern } from "./pattern.ts";

/** A pattern of whole measures that may fill a run, and how many it takes. */
export type Tile = {
  readonly measures: number;
  readonly pattern: Pattern;
  /** Asked for, so that as much as can be is filled with such ones. */
  readonly wanted: boolean;
};

type Best = { readonly unwanted: number; readonly pieces: number; readonly first: Tile };

const isBetter = (a: Omit<Best, "first">, b: Best | undefined): boolean =>
  !b || a.unwanted < b.unwanted || (a.unwanted === b.unwanted && a.pieces < b.pieces);

/**
 * Fills a run of measures exactly: as many measures as can be with wanted tiles, then with the fewest
 * joints, then with the earlier tile of the list first. Some tile must be of one measure.
 */
export const tileMeasures = (count: number, tiles: readonly Tile[]): readonly Pattern[] => {
  const best: (Best | undefined)[] = [undefined];
  for (let measures = 1; measures <= count; measures += 1) {
    let chosen: Best | undefined;
    for (const first of tiles.filter((tile) => tile.measures <= measures)) {
      const rest = measures - first.measures;
      const after = rest === 0 ? { unwanted: 0, pieces: 0 } : best[rest];
      if (after) {
        const unwanted = after.unwanted + (first.wanted ? 0 : first.measures);
        const pieces = after.pieces + 1;
        if (isBetter({ unwanted, pieces }, chosen)) {
          chosen = { unwanted, pieces, first };
        }
      }
    }
    best[measures] = chosen;
  }
  const chain: Pattern[] = [];
  for (let left = count; left > 0; ) {
    const first = best[left]?.first;
    if (!first) {
      throw new Error(`no patterns fill ${left} measures`);
    }
    chain.push(first.pattern);
    left -= first.measures;
  }
  return chain;
};
