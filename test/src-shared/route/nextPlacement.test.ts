import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { makeChord } from "../../../src-shared/harmony/makeChord.ts";
import { qualityTable } from "../../../src-shared/harmony/qualityTable.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { easeMicrometres } from "../../../src-shared/route/cost.ts";
import { nearestPlacement } from "../../../src-shared/route/nextPlacement.ts";
import { fret } from "../../../src-shared/units.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { plainRequest } from "../../laws/plainRequest.ts";

const neck = neckFor(tunings[0], fret(0));
const request = plainRequest(17);
const placed = (
  from: Parameters<typeof nearestPlacement>[0],
  name: string,
  quality: "" | "m" | "7",
) => nearestPlacement(from, makeChord(name, quality), neck, request);

const roots = ["C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"];
const anyChord = fc
  .tuple(fc.constantFrom(...roots), fc.constantFrom(...qualityTable))
  .map(([root, { quality }]) => makeChord(root, quality));

describe("the nearest placement", () => {
  test("costs no more than any other, and of equals is the first, against brute force", () => {
    fc.assert(
      fc.property(anyChord, anyChord, fc.nat(), (before, chord, at) => {
        const range = { low: fret(1), high: fret(17) };
        const starts = voicingsOf(before, neck, range, "3-2-1");
        const from = starts[at % starts.length];
        if (!from) throw new Error(`no voicing of ${before.name}`);
        const all = voicingsOf(chord, neck, range, "3-2-1");
        const costs = all.map((to) => easeMicrometres(from, to));
        const best = all[costs.indexOf(Math.min(...costs))];
        expect(nearestPlacement(from, chord, neck, request)).toEqual(best);
      }),
    );
  });

  // Movable closed shapes in open G, frets of strings 3-2-1: common practice, no published source.
  test("of C from the G barre at 12 is the barre five frets up or seven down: up", () => {
    const g = voicingsOf(makeChord("G", ""), neck, request.range, "3-2-1").find(
      ({ shape, position }) => shape === "barre" && position === 12,
    );
    const c = placed(g ?? null, "C", "");
    expect(c?.shape).toBe("barre");
    expect(c?.position).toBe(17);
  });

  test("of the chord that is held is where the hand is", () => {
    const g = placed(null, "G", "");
    expect(placed(g, "G", "")).toEqual(g);
  });

  test("from no place at all is the one nearest to the middle of the range", () => {
    // G: F shape at 4-3-5, D shape at 7-8-9, barre at 12, F shape at 16-15-17; the middle is 9.
    expect(placed(null, "G", "")?.frets.slice(0, 3)).toEqual([9, 8, 7]);
  });

  test("is none where the range holds none", () => {
    const narrow = { ...request, range: { low: fret(1), high: fret(2) } };
    expect(nearestPlacement(null, makeChord("G", ""), neck, narrow)).toBeNull();
  });
});
