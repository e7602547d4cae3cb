import type { Ink, Mark, PathMark } from "./page.ts";

/** How a form is filled and drawn round. */
export type Paint = Pick<PathMark, "fill" | "stroke">;

const round = (n: number): number => Math.round(n * 1000) / 1000;

/** Black all over, without an outline. */
export const solid: Paint = { fill: "ink", stroke: null };

/** An outline alone, `width` points wide. */
export const outlined = (width: number, ink: Ink = "ink"): Paint => ({
  fill: null,
  stroke: { ink, width },
});

/** A straight line, all in points. */
export const line = (
  from: readonly [number, number],
  to: readonly [number, number],
  width: number,
  ink: Ink = "ink",
): PathMark => polyline([from, to], width, ink);

/** A line through several points. */
export const polyline = (
  points: readonly (readonly [number, number])[],
  width: number,
  ink: Ink = "ink",
): PathMark => ({
  kind: "path",
  d: `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join(" L")}`,
  ...outlined(width, ink),
});

/** A closed form with straight sides. */
export const polygon = (
  points: readonly (readonly [number, number])[],
  paint: Paint,
): PathMark => ({
  kind: "path",
  d: `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join(" L")} Z`,
  ...paint,
});

/** A rectangle by its left top corner. */
export const rectangle = (
  x: number,
  y: number,
  width: number,
  height: number,
  paint: Paint,
): PathMark =>
  polygon(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    paint,
  );

/** How far the handles of four cubic curves stand off to draw a circle: 4/3 (sqrt 2 - 1). */
const HANDLE = 0.5522847498;

/** A circle round a middle. */
export const circle = (x: number, y: number, radius: number, paint: Paint): PathMark => {
  const h = radius * HANDLE;
  const at = (dx: number, dy: number): string => `${round(x + dx)} ${round(y + dy)}`;
  const d = [
    `M${at(radius, 0)}`,
    `C${at(radius, h)} ${at(h, radius)} ${at(0, radius)}`,
    `C${at(-h, radius)} ${at(-radius, h)} ${at(-radius, 0)}`,
    `C${at(-radius, -h)} ${at(-h, -radius)} ${at(0, -radius)}`,
    `C${at(h, -radius)} ${at(radius, -h)} ${at(radius, 0)}`,
    "Z",
  ].join(" ");
  return { kind: "path", d, ...paint };
};

/** A flat bow from one place to another, its middle `depth` points below (negative: above) them. */
export const bow = (
  from: readonly [number, number],
  to: readonly [number, number],
  depth: number,
  width: number,
): PathMark => {
  const rise = (depth * 4) / 3;
  const third = (to[0] - from[0]) / 4;
  const points = [[from[0] + third, from[1] + rise], [to[0] - third, to[1] + rise], to].map(
    (point) => point.map((n) => round(n ?? 0)).join(" "),
  );
  return {
    kind: "path",
    d: `M${round(from[0])} ${round(from[1])} C${points.join(" ")}`,
    ...outlined(width),
  };
};

const shiftPath = (d: string, dx: number, dy: number): string =>
  d.replaceAll(
    /(-?[\d.]+) (-?[\d.]+)/g,
    (_, x: string, y: string) => `${round(Number(x) + dx)} ${round(Number(y) + dy)}`,
  );

/** A mark so much further right and down. */
export const shift = (mark: Mark, dx: number, dy: number): Mark =>
  mark.kind === "text"
    ? { ...mark, x: mark.x + dx, y: mark.y + dy }
    : { ...mark, d: shiftPath(mark.d, dx, dy) };
