import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Mark, Round } from "../../../src-shared/practice/practice.ts";
import {
  type BookEntry,
  closeOf,
  emptyBook,
  endIn,
  markIn,
  middleOf,
} from "../../../src-shared/practice/roundBook.ts";
import { bpm, milliseconds } from "../../../src-shared/units.ts";

const round = (index: number): Round => ({
  item: { kind: "song" },
  stage: "song",
  tempo: bpm(90),
  unit: 4,
  mark: null,
  atMs: 1000 * index,
  lasted: milliseconds(900),
  shift: null,
});

/** Marks in the first and the second half of each round that is played. */
type Halves = { readonly first: readonly Mark[]; readonly second: readonly Mark[] };

const anyMarks = fc.array(fc.constantFrom<Mark>("clean", "not-yet"), { maxLength: 2 });
const anyRounds: fc.Arbitrary<readonly Halves[]> = fc.array(
  fc.record({ first: anyMarks, second: anyMarks }),
  { maxLength: 12 },
);

const playThrough = (rounds: readonly Halves[]): readonly Round[] => {
  const settled: Round[] = [];
  let book = emptyBook;
  const take = (entry: BookEntry): void => {
    book = entry.book;
    settled.push(...entry.settled);
  };
  for (const [index, { first, second }] of rounds.entries()) {
    for (const mark of first) take(markIn(book, mark, false));
    take(middleOf(book));
    for (const mark of second) take(markIn(book, mark, true));
    take(endIn(book, round(index)));
  }
  return [...settled, ...closeOf(book)];
};

describe("every row of rounds", () => {
  test("is settled once, in order, each round with the last mark that was meant for it", () => {
    fc.assert(
      fc.property(anyRounds, (rounds) => {
        // Looked at from the marks' side: a round's own come in its second half, one more may come
        // in the first half of the next, and what is left over there is the next one's.
        const wanted: (Mark | null)[] = [];
        for (const { first, second } of rounds) {
          const waits = wanted.length > 0 && wanted.at(-1) === null;
          const [late, ...early] = waits ? first : [undefined, ...first];
          if (late !== undefined) wanted[wanted.length - 1] = late;
          wanted.push(second.at(-1) ?? early.at(-1) ?? null);
        }
        const settled = playThrough(rounds);
        expect(settled.map(({ atMs }) => atMs)).toEqual(rounds.map((_, index) => 1000 * index));
        expect(settled.map(({ mark }) => mark)).toEqual(wanted);
      }),
    );
  });
});

describe("a mark", () => {
  test("early in a round is for the one before, from its middle on for itself", () => {
    const waiting = endIn(emptyBook, round(1)).book;
    expect(markIn(waiting, "clean", false).settled).toEqual([{ ...round(1), mark: "clean" }]);
    expect(markIn(waiting, "clean", true).settled).toEqual([]);
    expect(endIn(markIn(waiting, "not-yet", true).book, round(2)).settled).toEqual([
      round(1),
      { ...round(2), mark: "not-yet" },
    ]);
  });
});
