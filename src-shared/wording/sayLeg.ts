import type { Tuning } from "../neck/neck.ts";
import type { Leg, Placement } from "../route/route.ts";
import { words } from "../wordTable.ts";
import { shapeWords } from "./sayShape.ts";

/**
 * How far and which way: "Up 5", "Down 2", or "Same fret".
 * @example sayFrets(-2) // => "Down 2"
 */
export const sayFrets = (frets: number): string => {
  if (frets === 0) {
    return words.changes.sameFret;
  }
  return frets > 0 ? words.changes.up(frets) : words.changes.down(-frets);
};

/**
 * The change in one short line: "Up 5 to the D shape", "Stay in the barre"; where the grip has no
 * name "Up 5, root on string 2", "Stay, one finger across".
 */
export const sayLeg = (leg: Leg, to: Placement, tuning: Tuning): string => {
  const { kind, says } = shapeWords(to.voicing, tuning);
  if (leg.kind === "hold") {
    return kind === "name" ? words.changes.stayNamed(says) : words.changes.stay(says);
  }
  return kind === "name"
    ? words.changes.toNamed(sayFrets(leg.frets), says)
    : words.changes.to(sayFrets(leg.frets), says);
};

/** What the fingers do: "Every finger keeps its string", or which ones are placed anew. */
export const sayFingers = (leg: Leg): string => {
  if (leg.reformed.length === 0) {
    return words.changes.everyKeeps;
  }
  return words.changes.placeAnew(leg.reformed.map((finger) => words.changes.fingers[finger]));
};
