import { describe, expect, test } from "vitest";
import { neckFor } from "../../src-shared/neck/neckFor.ts";
import { tunings } from "../../src-shared/neck/tuningTable.ts";
import { choosePath } from "../../src-shared/route/choosePath.ts";
import type { Criterion } from "../../src-shared/route/layers.ts";
import { fret } from "../../src-shared/units.ts";
import type { Voicing } from "../../src-shared/voicing/voicing.ts";
import { voicingsOf } from "../../src-shared/voicing/voicingsOf.ts";
import { chordByTonal } from "../laws/anyHeldSong.ts";

const neck = neckFor(tunings[0], fret(0));

const layersOf = (song: string) =>
  song
    .split(" ")
    .map((name) =>
      voicingsOf(
        chordByTonal(name.replace("m", ""), name.endsWith("m") ? "m" : ""),
        neck,
        { low: fret(1), high: fret(17) },
        "3-2-1",
      ),
    );

type Cost = (from: Voicing, to: Voicing) => number;

const route = (song: string, cost: Cost, order: readonly Criterion["by"][]) => {
  const voicings = layersOf(song);
  const count = voicings.length;
  const at = (layer: number) => voicings[layer % count] ?? [];
  const path = choosePath(
    {
      count,
      width: (layer) => at(layer).length,
      open: (layer) => new Uint8Array(at(layer).length).fill(1),
      stride: (layer) => at(layer + 1).length,
      firstNext: () => 0,
    },
    order.map((by) => ({
      by,
      costs: (layer) =>
        Float64Array.from(at(layer).flatMap((a) => at(layer + 1).map((b) => cost(a, b)))),
    })),
    false,
  );
  const chosen = path?.choice.flatMap((state, layer) => at(layer)[state] ?? []) ?? [];
  return {
    said: chosen.map(({ shape, position }) => `${shape}${position}`).join(" "),
    moves: chosen.slice(1).map((to, index) => {
      const from = chosen[index];
      return from ? cost(from, to) : Number.NaN;
    }),
    costs: path?.costs,
  };
};

const frets: Cost = (from, to) => Math.abs(to.position - from.position);

describe("frets of the lowest fretted note as cost, in open G", () => {
  // Exhaustive oracle, computed independently: the three major and three minor closed shapes on
  // strings 3-2-1, lowest fret at least 1, highest at most 17; optima unique but where said.
  const sums: readonly (readonly [string, string])[] = [
    ["G C D G", "D7 F8 barre7 D7"],
    ["G C G D G", "D7 F8 D7 barre7 D7"],
    ["C F G C", "D12 F13 barre12 D12"],
    ["G Em Am D", "barre12 F12 barre13 D14"],
    // Two ties, the other an octave up: the lower one is first.
    ["D G A D", "D2 F3 barre2 D2"],
  ];
  for (const [song, path] of sums) {
    test(`take ${song} through ${path} by their sum`, () => {
      expect(route(song, frets, ["sum"]).said).toBe(path);
    });
  }

  // The sum buys a low total with one larger move; the worst first keeps every move small (minimax,
  // as Hori and Sagayama have it for guitar fingering, ISMIR 2016).
  const against: readonly (readonly [
    string,
    readonly [number, number],
    readonly [number, number],
    string,
  ])[] = [
    ["G C G Dm", [2, 2], [3, 1], "D7 F8 D7 barre6"],
    ["G C D Dm", [2, 2], [3, 1], "D7 F8 barre7 barre6"],
    ["G C D Bb", [2, 2], [3, 1], "D7 F8 barre7 F6"],
  ];
  for (const [song, [sum, worst], [calmSum, calmWorst], calm] of against) {
    test(`take ${song} with sum ${sum} and worst ${worst}, but by the worst with ${calmSum} and ${calmWorst}`, () => {
      const bySum = route(song, frets, ["sum", "worst"]);
      expect(bySum.costs).toEqual([sum, worst]);
      const byWorst = route(song, frets, ["worst", "sum"]);
      expect(byWorst.costs).toEqual([calmWorst, calmSum]);
      expect(byWorst.said).toBe(calm);
    });
  }
});

/**
 * Difficulty of going from one fret to another as published with the Fretting-Transformer (arXiv
 * 2506.14223), on one string, in hundredths: stretch (half a point a fret up, three quarters down),
 * locality (a quarter of both frets) and a quarter for staying on the string.
 */
const published: Cost = (from, to) => {
  const [p, q] = [from.position, to.position];
  const stretch = q > p ? 50 * (q - p) : 75 * (p - q);
  return stretch + 25 * (p + q) + 25;
};

describe("a published fretting formula as cost", () => {
  const at = (position: number): Voicing => ({
    shape: "barre",
    frets: [fret(position), fret(position), fret(position), null, null],
    fingers: [1, 1, 1, null, null],
    position: fret(position),
    positionMm: neck.scaleLength,
    root: null,
  });

  test("has the difficulties that its authors' code states", () => {
    const table = [
      [5, 7, 4.25],
      [7, 5, 4.75],
      [5, 10, 6.5],
      [10, 5, 7.75],
      [5, 12, 8],
      [12, 5, 9.75],
      [5, 17, 11.75],
      [17, 5, 14.75],
    ] as const;
    for (const [from, to, difficulty] of table) {
      expect(published(at(from), at(to)) / 100).toBe(difficulty);
    }
  });

  test("draws every route down the neck, as its locality term says, and is optimal", () => {
    const song = "G C D G";
    const found = route(song, published, ["sum"]);
    const layers = layersOf(song);
    let least = Number.POSITIVE_INFINITY;
    const walk = (layer: number, before: Voicing | null, cost: number): void => {
      if (layer === layers.length) {
        least = Math.min(least, cost);
        return;
      }
      for (const voicing of layers[layer] ?? []) {
        walk(layer + 1, voicing, cost + (before ? published(before, voicing) : 0));
      }
    };
    walk(0, null, 0);
    expect(found.costs).toEqual([least]);
    expect(found.said).toBe("F3 barre5 D2 F3");
  });
});
