/** A right-hand finger: thumb, index, middle. */
export type PickFinger = "T" | "I" | "M";
