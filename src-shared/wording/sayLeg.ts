import type { Leg, Placement } from "../route/route.ts";
import type { Finger } from "../voicing/voicing.ts";
import { sayShape } from "./sayShape.ts";

const fingerNames: Readonly<Record<Finger, string>> = {
  1: "index",
  2: "middle",
  3: "ring",
  4: "little",
};

/**
 * How far and which way: "Up 5", "Down 2", or "Same fret".
 * @example sayFrets(-2) // => "Down 2"
 */
export const sayFrets = (frets: number): string => {
  if (frets === 0) {
    return "Same fret";
  }
  return frets > 0 ? `Up ${frets}` : `Down ${-frets}`;
};

/** The change in one short line: "Up 5 to the D shape", "Stay in the barre". */
export const sayLeg = (leg: Leg, to: Placement): string => {
  const shape = sayShape(to.voicing.shape);
  return leg.kind === "hold" ? `Stay in the ${shape}` : `${sayFrets(leg.frets)} to the ${shape}`;
};

/** What the fingers do: "Every finger keeps its string", or which ones are placed anew. */
export const sayFingers = (leg: Leg): string => {
  if (leg.reformed.length === 0) {
    return "Every finger keeps its string";
  }
  return `Place anew: ${leg.reformed.map((finger) => fingerNames[finger]).join(", ")}`;
};
