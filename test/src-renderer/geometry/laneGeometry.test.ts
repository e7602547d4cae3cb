import { describe, expect, test } from "vitest";
import {
  fretLines,
  handScale,
  handY,
  laneShift,
  laneX,
  laneZooms,
  quarterWidth,
  steppedTick,
  tabLineY,
  zoomStep,
} from "../../../src-renderer/geometry/laneGeometry.ts";
import { laneLayout } from "../../../src-renderer/geometry/laneLayout.ts";
import { pxPerMm, wireX } from "../../../src-renderer/geometry/neckGeometry.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { millimetres } from "../../../src-shared/units.ts";

const placementsOf = (bars: string) =>
  chartToScore(`Title: Mill Lane\nKey: G\n${bars}\n`, wholeNeckPlan, null).route?.placements ?? [];

describe("the lanes' time axis", () => {
  test("gives each quarter note the same width", () => {
    expect(laneX(960, 50)).toBe(100);
    expect(laneX(-480, 50)).toBe(-50);
  });

  test("is pushed so that now lies at 30 % of the width", () => {
    const shift = laneShift(7200, 56, 1280);
    expect(laneX(7200, 56) + shift).toBeCloseTo(384, 9);
  });

  test("shows four bars or more of 4/4 at a desk and one and a half on a telephone", () => {
    expect(1280 / (4 * quarterWidth(1280, 1))).toBeGreaterThan(4);
    expect(390 / (4 * quarterWidth(390, 1))).toBeGreaterThan(1.5);
  });

  test("zooms in steps, each wider than the last, and stays at the ends", () => {
    const [most, fewest] = [laneZooms[0] ?? 0, laneZooms.at(-1) ?? 0];
    const up = laneZooms.map((zoom) => zoomStep(zoom, 1));
    expect(up).toEqual([...laneZooms.slice(1), fewest]);
    expect(laneZooms.map((zoom) => zoomStep(zoom, -1))).toEqual([most, ...laneZooms.slice(0, -1)]);
    const widths = laneZooms.map((zoom) => quarterWidth(1280, zoom));
    expect(widths.toSorted((a, b) => a - b)).toEqual(widths);
    expect(new Set(widths).size).toBe(laneZooms.length);
  });

  test("finds a step also from a zoom between two", () => {
    expect([zoomStep(0.9, 1), zoomStep(0.9, -1)]).toEqual([1, 0.8]);
  });

  test("goes by beats where motion is unwanted, also in the count-in", () => {
    expect([0, 959, 960, 2000, -1, -961].map((tick) => steppedTick(tick, 960))).toEqual([
      0, 0, 960, 1920, -960, -1920,
    ]);
  });
});

describe("the hand path's height", () => {
  const placements = placementsOf("| G | C | D | G |");
  const scale = handScale(placements, 30, 150);

  test("holds every position of the route", () => {
    expect(placements).toHaveLength(4);
    for (const { voicing } of placements) {
      const y = handY(scale, voicing.positionMm);
      expect(y).toBeGreaterThanOrEqual(30);
      expect(y).toBeLessThanOrEqual(150);
    }
  });

  test("goes up as the hand goes up the neck", () => {
    expect(handY(scale, 300)).toBeLessThan(handY(scale, 200));
  });

  test("keeps the proportions of the neck's own millimetres", () => {
    const view = {
      scaleLength: millimetres(666.75),
      frets: { low: 0, high: 22 },
      left: 0,
      width: 900,
      nutRight: false,
    };
    const neckRatio = (wireX(view, 12) - wireX(view, 7)) / (wireX(view, 7) - wireX(view, 5));
    const mm = (n: number): number => wireX(view, n) / pxPerMm(view);
    const pathRatio =
      (handY(scale, mm(7)) - handY(scale, mm(12))) / (handY(scale, mm(5)) - handY(scale, mm(7)));
    expect(pathRatio).toBeCloseTo(neckRatio, 6);
  });

  test("draws a song that stays in one place as one level in the middle", () => {
    const [one] = placementsOf("| G | G |");
    if (!one) throw new Error("no placement");
    expect(handY(handScale([one], 30, 150), one.voicing.positionMm)).toBeCloseTo(90, 9);
  });

  test("stands for a song without a route", () => {
    expect(handY(handScale([], 30, 150), 0)).toBe(150);
  });

  test("marks only frets within it, and none so near another that their numbers touch", () => {
    const wide = { lowMm: 100, highMm: 420, top: 30, bottom: 150 };
    const lines = fretLines(wide, [3, 5, 7, 10, 12, 15, 17, 19, 22], millimetres(666.75));
    expect(lines.map((line) => line.fret)).toEqual([3, 5, 7, 10, 12, 15]);
    const tight = fretLines({ ...wide, top: 110 }, [5, 7, 10, 12], millimetres(666.75));
    for (const [index, line] of tight.entries()) {
      const before = tight[index - 1];
      expect(before ? before.y - line.y : Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(14);
    }
    expect(tight.length).toBeLessThan(4);
  });
});

describe("the lanes' layout", () => {
  test.each([
    [1280, 300],
    [1024, 190],
    [390, 180],
  ])("keeps path, tablature and fingers apart at %i by %i", (width, height) => {
    const layout = laneLayout(width, height, 1);
    expect(layout.handTop).toBeLessThanOrEqual(layout.handBottom);
    expect(layout.handBottom).toBeLessThan(layout.tabTop);
    expect(layout.gridHeight).toBeLessThan(height);
    expect(layout.nowX).toBeCloseTo(0.3 * width, 9);
  });

  test("has string 1 on the tablature's top line and the fifth on its lowest", () => {
    expect(tabLineY(11, 15, 1)).toBe(11);
    expect(tabLineY(11, 15, 5)).toBe(71);
  });
});
