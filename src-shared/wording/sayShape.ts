import type { ShapeName, Voicing } from "../voicing/voicing.ts";

const names: Readonly<Record<ShapeName, string>> = {
  F: "F shape",
  D: "D shape",
  barre: "barre",
};

/**
 * A shape as the trade calls it.
 * @example sayShape("D") // => "D shape"
 */
export const sayShape = (shape: ShapeName): string => names[shape];

/** Where a voicing is: "D shape, fret 7"; the fret is the one that the index finger covers. */
export const sayVoicing = (voicing: Voicing): string =>
  `${sayShape(voicing.shape)}, fret ${voicing.position}`;
