import { describe, expect, test } from "vitest";
import { placeOnNeck } from "../../../src-renderer/geometry/neckAids.ts";
import { fingerX, wireX } from "../../../src-renderer/geometry/neckGeometry.ts";
import { neckEdges, neckOutline } from "../../../src-renderer/geometry/neckOutline.ts";
import { fret, millimetres } from "../../../src-shared/units.ts";

const view = {
  scaleLength: millimetres(666.75),
  frets: { low: 0, high: 22 },
  left: 8,
  width: 1200,
  nutRight: false,
};
const strings = { top: 20, gap: 30, fifthOnTop: false };

describe("a place marked on the neck", () => {
  test("lies where a finger would stop it", () => {
    const at = placeOnNeck({ string: 2, fret: fret(8) }, 0, view, strings);
    expect(at).toEqual({ x: fingerX(view, 8), y: 50 });
  });

  test("that is an open string stands at the nut, the capo or the short string's peg", () => {
    const open = (string: 1 | 5, capo: number) =>
      placeOnNeck({ string, fret: fret(0) }, capo, view, strings)?.x ?? 0;
    expect(open(1, 0)).toBeGreaterThan(wireX(view, 0));
    expect(open(1, 0)).toBeLessThan(wireX(view, 1));
    expect(open(1, 3)).toBeLessThan(wireX(view, 3));
    expect(open(5, 0)).toBeLessThan(wireX(view, 5));
    expect(open(5, 2)).toBeLessThan(wireX(view, 7));
  });

  test("is not drawn outside the frets shown", () => {
    const part = { ...view, frets: { low: 7, high: 14 } };
    expect(placeOnNeck({ string: 1, fret: fret(7) }, 0, part, strings)).toBeNull();
    expect(placeOnNeck({ string: 1, fret: fret(15) }, 0, part, strings)).toBeNull();
    expect(placeOnNeck({ string: 5, fret: fret(0) }, 0, part, strings)).toBeNull();
  });
});

describe("the board", () => {
  test("is narrow before the peg and wide after it, whichever way it is seen", () => {
    for (const nutRight of [false, true]) {
      for (const fifthOnTop of [false, true]) {
        const edges = neckEdges({ ...view, nutRight }, { ...strings, fifthOnTop });
        expect(Math.abs(edges.fifth - edges.first)).toBeGreaterThan(
          Math.abs(edges.fourth - edges.first),
        );
        expect(Math.abs(edges.peg - edges.nut)).toBeLessThan(Math.abs(edges.end - edges.nut));
        expect(edges.nut < edges.end).toBe(!nutRight);
      }
    }
  });

  test("has no step where only frets above the peg are shown", () => {
    const part = { ...view, frets: { low: 6, high: 15 } };
    expect(neckOutline(view, strings)).toContain("C");
    expect(neckOutline(part, strings)).not.toContain("C");
  });
});
