import { repeatGroup } from "../chart/repeatGroup.ts";
import type { Piece } from "./piece.ts";

/**
 * Pieces with every repeat's start told: where a file leaves it out, it is the start of the tune, or
 * what follows the last double bar, label or repeat's end (ABC 2.1, section 4.8).
 */
export const explicitRepeats = (pieces: readonly Piece[]): readonly Piece[] => {
  const starts = new Set<number>();
  let from = 0;
  let open = false;
  let inEnding = false;
  for (const [at, piece] of pieces.entries()) {
    if (piece.label !== null || piece.opensRepeat) {
      [from, open, inEnding] = [at, piece.opensRepeat, false];
    }
    inEnding ||= piece.ending !== null;
    if (piece.plays > 1 && !open) {
      starts.add(from);
      open = true;
    }
    const chain = pieces[at + 1]?.ending !== null && pieces[at + 1] !== undefined && inEnding;
    if (piece.plays > 1 || (piece.endsEnding && (inEnding || !open))) {
      inEnding = false;
      if (!chain) {
        [from, open] = [at + 1, false];
      }
    }
  }
  return pieces.map((piece, at) => (starts.has(at) ? { ...piece, opensRepeat: true } : piece));
};

/** What a passage played a second time leaves out, and what lies between a repeat's two ends. */
export type Repeats = {
  /** Pieces of endings other than the last. */
  readonly skipped: ReadonlySet<number>;
  /** Lines within a repeated passage: `n` is the line before piece n. */
  readonly within: ReadonlySet<number>;
};

/** The repeats of pieces whose starts are told. */
export const repeatsOf = (pieces: readonly Piece[]): Repeats => {
  const skipped = new Set<number>();
  const within = new Set<number>();
  for (let at = 0; at < pieces.length; at += 1) {
    const group = pieces[at]?.opensRepeat === true ? repeatGroup(pieces, at) : null;
    if (group === null) {
      continue;
    }
    for (let line = group.from + 1; line < group.to; line += 1) {
      within.add(line);
    }
    for (const ending of group.endings) {
      if (!ending.passes.includes(group.plays)) {
        for (let piece = ending.from; piece < ending.to; piece += 1) {
          skipped.add(piece);
        }
      }
    }
    at = group.to - 1;
  }
  return { skipped, within };
};
