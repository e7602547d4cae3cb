// Constants of three hands for Fitts's law. Learner: the slope for arm movements (Langolf, Chaffin
// and Foulke 1976, from memory); default: about that for single aimed movements (Fitts and Peterson
// 1964, from memory); skilled: near the slope for the wrist. Borrowed from aimed arm movements, not
// measured on a banjo; a player's own practice is to refit them.
import { milliseconds } from "../units.ts";
import type { Hand } from "./movement.ts";

/**
 * How practised a hand is. `default` is the player's own where they have accepted one, else the
 * usual; `usual` is the usual one whatever they have accepted.
 */
export type HandName = "learner" | "default" | "skilled" | "usual";

/** Each hand's two numbers, in ms and ms per bit. */
export const handTable: Readonly<Record<HandName, Hand>> = {
  learner: { start: milliseconds(60), perBit: milliseconds(105) },
  default: { start: milliseconds(30), perBit: milliseconds(75) },
  skilled: { start: milliseconds(0), perBit: milliseconds(50) },
  usual: { start: milliseconds(30), perBit: milliseconds(75) },
};

/**
 * A hand's two numbers, where `own` is the one that the player has accepted, or null.
 * @example handOf("default", null) // => { start: 30, perBit: 75 }
 * @example handOf("default", { start: 20, perBit: 64 }) // => { start: 20, perBit: 64 }
 */
export const handOf = (name: HandName, own: Hand | null): Hand =>
  name === "default" && own !== null ? own : handTable[name];
