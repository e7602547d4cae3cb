// Constants of three hands for Fitts's law. Learner: the slope for arm movements (Langolf, Chaffin
// and Foulke 1976, from memory); default: about that for single aimed movements (Fitts and Peterson
// 1964, from memory); skilled: near the slope for the wrist. Borrowed from aimed arm movements, not
// measured on a banjo; a player's own practice is to refit them.
import { milliseconds } from "../units.ts";
import type { Hand } from "./movement.ts";

/** How practised a hand is. */
export type HandName = "learner" | "default" | "skilled";

/** Each hand's two numbers, in ms and ms per bit. */
export const handTable: Readonly<Record<HandName, Hand>> = {
  learner: { start: milliseconds(60), perBit: milliseconds(105) },
  default: { start: milliseconds(30), perBit: milliseconds(75) },
  skilled: { start: milliseconds(0), perBit: milliseconds(50) },
};
