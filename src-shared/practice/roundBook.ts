import type { Mark, Round } from "./practice.ts";

/** What is known of the round that is played, and of the one before it. */
export type RoundBook = {
  /** The last round, as long as a mark may still be meant for it; null for none. */
  readonly before: Round | null;
  /** The mark of the round that is played; null for none yet. */
  readonly mark: Mark | null;
};

/** The book after something happened, and the rounds that are settled by it, in order of time. */
export type BookEntry = { readonly book: RoundBook; readonly settled: readonly Round[] };

/** Nothing has been played. */
export const emptyBook: RoundBook = { before: null, mark: null };

/**
 * A mark is given while the hands play on. In a round's first half it is meant for the round before,
 * which has just been heard; from its middle on, where what is practised has come, for the round
 * itself. With no round before it is for this one. A second mark for a round takes the place of its first.
 */
export const markIn = (book: RoundBook, mark: Mark, secondHalf: boolean): BookEntry => {
  const { before } = book;
  if (secondHalf || before === null) return { book: { ...book, mark }, settled: [] };
  return { book: { ...book, before: null }, settled: [{ ...before, mark }] };
};

/** The middle of a round has come: nothing more is said of the one before. */
export const middleOf = (book: RoundBook): BookEntry => ({
  book: { ...book, before: null },
  settled: book.before ? [book.before] : [],
});

/** A round has ended; what it has as a mark is what was given in it. */
export const endIn = (book: RoundBook, round: Round): BookEntry => {
  const { settled } = middleOf(book);
  const ended = { ...round, mark: book.mark };
  return book.mark === null
    ? { book: { before: ended, mark: null }, settled }
    : { book: emptyBook, settled: [...settled, ended] };
};

/** The player goes on to something else: a round that has not ended is none. */
export const closeOf = (book: RoundBook): readonly Round[] => middleOf(book).settled;
