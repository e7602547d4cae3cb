import { describe, expect, test } from "vitest";
import { handScale, handY } from "../../../src-renderer/geometry/laneGeometry.ts";
import { SMALL_BLOCK, smallPath } from "../../../src-renderer/geometry/smallPath.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { tick } from "../../../src-shared/units.ts";

const walk = chartToScore(
  "Title: Lock Gate\nKey: G\nTime: 4/4\n| G | C | C | N.C. | G | G7 |\n",
  { ...wholeNeckPlan, fretHigh: 15, shapes: ["D"] },
  null,
);
const placements = walk.route?.placements ?? [];
const scale = handScale(placements, 20, 140);
const WIDTH = 600;
const drawn = smallPath(placements, walk.timeline.length, scale, WIDTH);

/** The figures of a path, two to a point. */
const pointsOf = (path: string): readonly (readonly number[])[] =>
  path
    .split(/[ML]/)
    .flatMap((pair) => (pair ? [pair.replace("Z", "").split(" ").map(Number)] : []));

describe("a route as a small picture", () => {
  test("has a closed form for every placement, as wide as it lasts", () => {
    const forms = drawn.forms.split("Z").filter((form) => form !== "");
    expect(forms).toHaveLength(placements.length);
    for (const [index, form] of forms.entries()) {
      const xs = pointsOf(form).map(([x]) => x ?? Number.NaN);
      const held = placements[index];
      // Six bars in 600 pixels; one pixel parts neighbours.
      const bars = (held?.length ?? 0) / 1920;
      expect(Math.min(...xs)).toBeCloseTo(((held?.start ?? 0) / 1920) * 100, 6);
      expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(bars * 100 - 1, 6);
    }
  });

  test("shows a higher place on the neck higher up", () => {
    const [g, c] = drawn.forms.split("Z").map((form) => pointsOf(form).map(([, y]) => y ?? 0));
    expect(Math.max(...(c ?? []))).toBeLessThan(Math.max(...(g ?? [])));
    const low = handY(scale, placements[0]?.voicing.positionMm ?? 0) + SMALL_BLOCK / 2;
    expect(Math.max(...(g ?? []))).toBeCloseTo(low, 2);
  });

  test("joins places that differ, over a rest too, and leaves an eighth before the next chord", () => {
    const slopes = drawn.slopes.split("M").filter((slope) => slope !== "");
    const moved = placements.filter(
      ({ voicing }, index) =>
        index > 0 && placements[index - 1]?.voicing.position !== voicing.position,
    );
    expect(slopes).toHaveLength(moved.length);
    expect(moved.length).toBeGreaterThan(1);
    const [[leave], [arrive]] = pointsOf(slopes[0] ?? "") as [number[], number[]];
    expect([leave, arrive]).toEqual([87.5, 100]);
  });

  test("stays a picture where there is no room, and is empty where nothing is held", () => {
    expect(smallPath(placements, walk.timeline.length, scale, 0).forms).not.toContain("NaN");
    expect(smallPath([], tick(1920), scale, WIDTH)).toEqual({ forms: "", slopes: "" });
  });
});
