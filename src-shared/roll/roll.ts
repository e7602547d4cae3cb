import type { StringNumber } from "../neck/neck.ts";

/** A right-hand finger: thumb, index, middle. */
export type PickFinger = "T" | "I" | "M";

/** One finger on one string, as it lies for a voicing on strings 3, 2 and 1. */
export type Pick = {
  readonly finger: PickFinger;
  readonly string: StringNumber;
};

/** What the right hand does on one eighth: one pick, several together (a pinch), or none. */
export type Stroke = readonly Pick[];

/** A right-hand pattern, one stroke for each eighth note. */
export type Roll = {
  readonly name: string;
  readonly strokes: readonly Stroke[];
};
