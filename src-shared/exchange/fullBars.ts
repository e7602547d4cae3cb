import { words } from "../wordTable.ts";
import type { Piece } from "./piece.ts";

/** Pieces made into full bars, and what was done, in words. */
export type FullBars = { readonly bars: readonly Piece[]; readonly said: readonly string[] };

/** So many bars without a bar line between them are divided at most; more is no way to write them. */
const MOST_DIVIDED = 16;

/** Two lengths in ticks that are meant to be one: triplets are not whole ticks. */
const same = (one: number, other: number): boolean => Math.abs(one - other) < 1;

const begins = (piece: Piece): boolean =>
  piece.opensRepeat || piece.ending !== null || piece.label !== null;

/** What stood on the left of a piece that is left out goes to the next; so does its last chord. */
const passedOn = (from: Piece, to: Piece): Piece => {
  const last = from.symbols.at(-1);
  const starts = to.symbols.some((symbol) => symbol.at < 1);
  return {
    ...to,
    label: to.label ?? from.label,
    opensRepeat: from.opensRepeat || to.opensRepeat,
    symbols: last === undefined || starts ? to.symbols : [{ ...last, at: 0 }, ...to.symbols],
  };
};

const together = (one: Piece, other: Piece): Piece => ({
  ...one,
  length: one.length + other.length,
  symbols: [
    ...one.symbols,
    ...other.symbols.map((symbol) => ({ ...symbol, at: symbol.at + one.length })),
  ],
  plays: other.plays,
  endsEnding: other.endsEnding,
});

/** A piece of several bars without bar lines between, as bars. */
const divided = (piece: Piece, full: number): readonly Piece[] => {
  const count = Math.round(piece.length / full);
  return Array.from({ length: count }, (_, index) => ({
    ...piece,
    length: full,
    symbols: piece.symbols
      .filter(({ at }) => Math.floor((at + 1) / full) === index)
      .map((symbol) => ({ ...symbol, at: Math.max(0, symbol.at - index * full) })),
    label: index === 0 ? piece.label : null,
    opensRepeat: index === 0 && piece.opensRepeat,
    ending: index === 0 ? piece.ending : null,
    plays: index === count - 1 ? piece.plays : 1,
    endsEnding: index === count - 1 && piece.endsEnding,
  }));
};

/**
 * Makes what stands between bar lines into bars of `full` ticks. A pick-up is left out; a bar that
 * is cut in two by a line is joined; one that a repeat cuts short is filled up with its last chord;
 * several bars without lines between are divided. Whatever changes the changes is said.
 */
export const fullBars = (pieces: readonly Piece[], full: number): FullBars => {
  const bars: Piece[] = [];
  const said: string[] = [];
  let pending: Piece | null = null;
  for (const [index, given] of pieces.entries()) {
    const piece: Piece = pending === null ? given : passedOn(pending, given);
    pending = null;
    const before = bars.at(-1);
    const isLast = index === pieces.length - 1;
    if (piece.length > full && !same(piece.length, full)) {
      const whole = same(piece.length % full, 0) || same(piece.length % full, full);
      if (whole && piece.length / full < MOST_DIVIDED + 1) {
        bars.push(...divided(piece, full));
      } else {
        said.push(words.import.longBar(piece.number));
        const symbols = piece.symbols.filter(({ at }) => at < full);
        bars.push({ ...piece, length: full, symbols });
      }
      continue;
    }
    if (same(piece.length, full)) {
      bars.push({ ...piece, length: full });
      continue;
    }
    const completes = before !== undefined && same(before.length + piece.length, full);
    if (completes && !begins(piece) && before.plays === 1) {
      bars[bars.length - 1] = together(before, piece);
    } else if (
      !isLast &&
      piece.ending === null &&
      piece.plays === 1 &&
      (before === undefined || completes || (begins(piece) && piece.length <= full / 2))
    ) {
      pending = piece;
      if (piece.symbols.length > 0) {
        const chords = piece.symbols.map(({ symbol }) => symbol).join(" ");
        said.push(words.import.pickUp(piece.number, chords));
      }
    } else {
      bars.push(piece);
    }
  }
  const short = bars.filter((bar) => bar.length < full && !same(bar.length, full));
  const odd = short.filter((bar) => bar.plays === 1 && !bar.endsEnding && bar !== bars.at(-1));
  for (const bar of odd) {
    said.push(words.import.shortBar(bar.number));
  }
  return { bars: bars.map((bar) => ({ ...bar, length: full })), said };
};
