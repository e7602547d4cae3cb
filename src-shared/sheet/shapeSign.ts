import type { ShapeName } from "../voicing/voicing.ts";
import type { PathMark } from "./page.ts";
import { polygon, solid } from "./pen.ts";

/**
 * The sign by which a shape is known before its name is read, as on the screen: the F shape a block
 * with its right upper corner raised, the D shape a rising wedge, the barre a plain bar. It stands on
 * y, `width` points wide and `height` high.
 */
export const shapeSign = (
  shape: ShapeName,
  x: number,
  y: number,
  width: number,
  height: number,
): PathMark => {
  const right = x + width;
  const top = y - height;
  const foot: readonly (readonly [number, number])[] = [
    [right, y],
    [x, y],
  ];
  switch (shape) {
    case "barre":
      return polygon([[x, y - height * 0.6], [right, y - height * 0.6], ...foot], solid);
    case "D":
      return polygon([[x, y - height * 0.35], [right, top], ...foot], solid);
    case "F": {
      const level = y - height * 0.55;
      return polygon(
        [
          [x, level],
          [right - width * 0.4, level],
          [right - width * 0.4, top],
          [right, top],
          ...foot,
        ],
        solid,
      );
    }
  }
};
