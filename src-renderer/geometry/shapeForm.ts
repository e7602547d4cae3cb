import type { ShapeName } from "../../src-shared/voicing/voicing.ts";

/** A box on the screen. Pixels. */
export type Box = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** How much of the box's height the level part of a form fills. */
const LEVEL = { F: 0.74, D: 0.56, barre: 0.6 } as const;

const line = (points: readonly (readonly [number, number])[]): string =>
  `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join("L")}Z`;

const round = (n: number): number => Math.round(n * 100) / 100;

/**
 * The outline by which a shape is known before its name is read: the F shape a block with its right
 * upper corner raised, the D shape a rising wedge, the barre a plain bar. All stand on the box's
 * bottom edge and fill its width.
 */
export const shapeForm = (shape: ShapeName, box: Box): string => {
  const { x, y, width, height } = box;
  const right = x + width;
  const bottom = y + height;
  const level = bottom - height * LEVEL[shape];
  switch (shape) {
    case "barre":
      return line([
        [x, level],
        [right, level],
        [right, bottom],
        [x, bottom],
      ]);
    case "D":
      return line([
        [x, level],
        [right, y],
        [right, bottom],
        [x, bottom],
      ]);
    case "F": {
      const corner = Math.min(width * 0.4, height * 0.8);
      return line([
        [x, level],
        [right - corner, level],
        [right - corner * 0.7, y],
        [right, y],
        [right, bottom],
        [x, bottom],
      ]);
    }
  }
};
