import { describe, expect, test } from "vitest";
import {
  dotRadius,
  fingerX,
  fretStretch,
  type NeckView,
  pxPerMm,
  spacesOf,
  spaceWidth,
  stringY,
  wireX,
} from "../../../src-renderer/geometry/neckGeometry.ts";
import { millimetres } from "../../../src-shared/units.ts";
import { printedFrets } from "../../published/fretTable.ts";

const whole: NeckView = {
  scaleLength: millimetres(647.7),
  frets: { low: 0, high: 22 },
  left: 40,
  width: 1200,
  nutRight: false,
};

describe("the neck from left to right", () => {
  test("has its frets where a published table for a 25.5 inch scale has them", () => {
    for (const [fret, mm] of printedFrets) {
      expect((wireX(whole, fret) - 40) / pxPerMm(whole)).toBeCloseTo(mm, 1);
    }
  });

  test("begins with the nut and ends with the last fret shown", () => {
    expect(wireX(whole, 0)).toBeCloseTo(40, 6);
    expect(wireX(whole, 22)).toBeCloseTo(1240, 6);
  });

  test("puts a finger in the middle of the space behind its fret", () => {
    expect(fingerX(whole, 8) - wireX(whole, 7)).toBeCloseTo(wireX(whole, 8) - fingerX(whole, 8), 9);
  });

  test("narrows by the twelfth root of two from each fret to the next", () => {
    for (let fret = 2; fret <= 22; fret += 1) {
      expect(spaceWidth(whole, fret - 1) / spaceWidth(whole, fret)).toBeCloseTo(2 ** (1 / 12), 3);
    }
  });

  test("keeps the same millimetres to a pixel when only a part of it is shown", () => {
    const part: NeckView = { ...whole, frets: { low: 4, high: 11 } };
    const drawn = (wireX(part, 11) - wireX(part, 6)) / pxPerMm(part);
    expect(drawn).toBeCloseTo((wireX(whole, 11) - wireX(whole, 6)) / pxPerMm(whole), 6);
  });
});

describe("the neck with the nut at the right", () => {
  const mirrored: NeckView = { ...whole, nutRight: true };

  test("is the same neck in a mirror", () => {
    for (let fret = 0; fret <= 22; fret += 1) {
      expect(wireX(mirrored, fret) - 40).toBeCloseTo(1240 - wireX(whole, fret), 9);
      if (fret > 0) expect(spaceWidth(mirrored, fret)).toBeCloseTo(spaceWidth(whole, fret), 9);
    }
  });

  test("puts a finger on the nut's side of its wire", () => {
    expect(fingerX(mirrored, 5)).toBeGreaterThan(wireX(mirrored, 5));
    expect(fingerX(whole, 5)).toBeLessThan(wireX(whole, 5));
  });
});

describe("the neck from top to bottom", () => {
  test("has string 5 on top and string 1 at the bottom as a listener sees it", () => {
    const strings = { top: 17, gap: 30, fifthOnTop: true };
    expect([1, 2, 3, 4, 5].map((n) => stringY(strings, n as 1 | 2 | 3 | 4 | 5))).toEqual([
      137, 107, 77, 47, 17,
    ]);
  });

  test("has string 1 on top and the short fifth string at the bottom", () => {
    const strings = { top: 17, gap: 30, fifthOnTop: false };
    expect([1, 2, 3, 4, 5].map((n) => stringY(strings, n as 1 | 2 | 3 | 4 | 5))).toEqual([
      17, 47, 77, 107, 137,
    ]);
  });

  test("draws no dot so large that a barre's dots touch", () => {
    expect(2 * dotRadius(whole, { top: 0, gap: 26, fifthOnTop: false }, 18)).toBeLessThan(26);
  });
});

describe("the stretch of frets shown", () => {
  test("is the whole neck where there is room for it", () => {
    expect(fretStretch([7, 8, 9], 22, 1000)).toEqual({ low: 0, high: 22 });
  });

  test("is what the song uses with a margin where there is little room", () => {
    expect(fretStretch([7, 8, 9, 14], 22, 390)).toEqual({ low: 4, high: 16 });
  });

  test("never goes beyond the nut or the last fret", () => {
    expect(fretStretch([1, 21], 22, 390)).toEqual({ low: 0, high: 22 });
  });

  test("is the whole neck for a song without notes", () => {
    expect(fretStretch([], 22, 390)).toEqual({ low: 0, high: 22 });
  });

  test("has a space behind each of its frets but the first", () => {
    expect(spacesOf({ low: 4, high: 7 })).toEqual([5, 6, 7]);
  });
});
