/**
 * How anything that reads says what is wrong, where, and what would be right.
 * A reader never throws and never answers with an empty value: it gives its best value plus notes.
 */

/** A place in a text: both counted from 1. `length` is how many characters are meant (at least 1). */
export type TextPlace = {
  readonly line: number;
  readonly column: number;
  readonly length: number;
};

/** One thing found while reading. An `error` means part of the text was not understood. */
export type Diagnostic = {
  readonly severity: "error" | "hint";
  readonly code: string;
  readonly at: TextPlace;
  /** What is wrong, in one sentence. */
  readonly says: string;
  /** What to do about it, in one sentence. */
  readonly try: string;
};

/** What every reader returns: its best value, and what it has to say about the text. */
export type Read<T> = {
  readonly value: T;
  readonly notes: readonly Diagnostic[];
};

/**
 * Whether anything among the notes is an error (hints do not count).
 * @example hasErrors([]) // => false
 */
export const hasErrors = (notes: readonly Diagnostic[]): boolean =>
  notes.some((note) => note.severity === "error");
