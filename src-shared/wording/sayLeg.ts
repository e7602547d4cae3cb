import type { Tuning } from "../neck/neck.ts";
import type { Leg, Placement } from "../route/route.ts";
import type { Finger } from "../voicing/voicing.ts";
import { shapeWords } from "./sayShape.ts";

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

/**
 * The change in one short line: "Up 5 to the D shape", "Stay in the barre"; where the grip has no
 * name "Up 5, root on string 2", "Stay, one finger across".
 */
export const sayLeg = (leg: Leg, to: Placement, tuning: Tuning): string => {
  const { kind, says } = shapeWords(to.voicing, tuning);
  if (leg.kind === "hold") {
    return kind === "name" ? `Stay in the ${says}` : `Stay, ${says}`;
  }
  return `${sayFrets(leg.frets)}${kind === "name" ? " to the" : ","} ${says}`;
};

/** What the fingers do: "Every finger keeps its string", or which ones are placed anew. */
export const sayFingers = (leg: Leg): string => {
  if (leg.reformed.length === 0) {
    return "Every finger keeps its string";
  }
  return `Place anew: ${leg.reformed.map((finger) => fingerNames[finger]).join(", ")}`;
};
