import { describe, expect, test } from "vitest";
import { shapeForm } from "../../../src-renderer/geometry/shapeForm.ts";
import type { ShapeName } from "../../../src-shared/voicing/voicing.ts";

const box = { x: 100, y: 10, width: 200, height: 40 };

/** The outline's corners, read back from the path. */
const corners = (shape: ShapeName): readonly (readonly [number, number])[] =>
  shapeForm(shape, box)
    .slice(1, -1)
    .split("L")
    .map((point) => {
      const [x = 0, y = 0] = point.split(" ").map(Number);
      return [x, y] as const;
    });

/** Height of the upper edge at an x, by following the outline. */
const upperEdge = (shape: ShapeName, at: number): number => {
  const points = corners(shape);
  const [before, after] = points
    .map((point, index) => [point, points[index + 1]] as const)
    .find(([a, b]) => b !== undefined && a[0] <= at && at <= b[0]) ?? [
    [0, 0],
    [0, 0],
  ];
  if (!after || before[0] === after[0]) return before[1];
  return before[1] + ((after[1] - before[1]) * (at - before[0])) / (after[0] - before[0]);
};

describe.each(["F", "D", "barre"] as const)("the form of the %s shape", (shape) => {
  test("stays within its box and fills its width", () => {
    const xs = corners(shape).map(([x]) => x);
    const ys = corners(shape).map(([, y]) => y);
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([100, 300]);
    expect(Math.min(...ys)).toBeGreaterThanOrEqual(10);
    expect(Math.max(...ys)).toBe(50);
  });
});

test("the F shape is level with its right upper corner raised", () => {
  expect(upperEdge("F", 110)).toBe(upperEdge("F", 250));
  expect(upperEdge("F", 299)).toBe(10);
  expect(upperEdge("F", 110)).toBeGreaterThan(10);
});

test("the D shape rises all the way", () => {
  expect(upperEdge("D", 200)).toBeLessThan(upperEdge("D", 110));
  expect(upperEdge("D", 300)).toBe(10);
});

test("the barre is plain", () => {
  expect(upperEdge("barre", 110)).toBe(upperEdge("barre", 290));
});
