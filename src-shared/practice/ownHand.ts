import * as v from "valibot";
import type { Hand } from "../route/movement.ts";
import { milliseconds } from "../units.ts";
import { countMarks, type HandMark } from "./handMark.ts";
import { type FittedHand, needOf, refit } from "./refit.ts";

/** A hand that the player has taken for their own. */
export type OwnHand = Hand & {
  /** How many marks told it. */
  readonly marks: number;
  /** When it was accepted, in ms since 1970 (UTC). */
  readonly acceptedMs: number;
};

/** What the player has said of their own hand. */
export type HandAnswer = {
  /** null: the usual hand. */
  readonly own: OwnHand | null;
  /** When a proposal was last refused, in ms since 1970 (UTC); null where none was. */
  readonly refusedMs: number | null;
};

/** Nothing has been proposed yet. */
export const noAnswer: HandAnswer = { own: null, refusedMs: null };

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const ms = (low: number, high: number) =>
  v.pipe(v.number(), v.minValue(low), v.maxValue(high), v.transform(milliseconds));

/** Checks what the player has said of their hand, as it comes from disk or over the wire. */
export const handAnswerSchema: v.GenericSchema<unknown, HandAnswer> = v.object({
  own: v.nullable(
    v.pipe(
      v.object({ start: ms(-500, 1000), perBit: ms(0, 1000), marks: count, acceptedMs: count }),
      v.check(({ start, perBit }) => start + perBit > 0, "a hand that needs no time is none"),
    ),
  ),
  refusedMs: v.nullable(count),
});

/** Nothing is proposed from fewer marks than this, nor from fewer than `LEAST_OF_A_KIND` of each kind. */
export const LEAST_MARKS = 20;
/** Marks of one kind alone say only that the hand is faster, or slower, than what was tried. */
export const LEAST_OF_A_KIND = 4;
/** Once a proposal was refused, it takes so many more marks to make another. */
export const MORE_MARKS = 20;

/** Five frets up from the fifth: the shift by which hands are told apart, in bits. */
export const FIVE_FRETS_BITS = 3.616;

/** What the marks come to, beside the hand that is in use. */
export type HandProposal =
  | { readonly kind: "too-few"; readonly clean: number; readonly notYet: number }
  /** The hand in use is what the marks tell, within how sure they are. */
  | { readonly kind: "fits"; readonly fit: FittedHand }
  | { readonly kind: "differs"; readonly fit: FittedHand; readonly refused: boolean };

/**
 * What the marks propose; `sinceRefused` of them are newer than the last refusal, or it is null where
 * nothing was refused. A hand in use that lies within half of what is unsure about five frets is
 * left in peace.
 */
export const proposeHand = (
  marks: readonly HandMark[],
  inUse: Hand,
  sinceRefused: number | null,
): HandProposal => {
  const { clean, notYet } = countMarks(marks);
  if (clean + notYet < LEAST_MARKS || Math.min(clean, notYet) < LEAST_OF_A_KIND) {
    return { kind: "too-few", clean, notYet };
  }
  const fit = refit(marks);
  const { value, high } = needOf(fit, FIVE_FRETS_BITS);
  const now = inUse.start + inUse.perBit * FIVE_FRETS_BITS;
  if (Math.abs(now - value) <= (high - value) / 2) {
    return { kind: "fits", fit };
  }
  return { kind: "differs", fit, refused: sinceRefused !== null && sinceRefused < MORE_MARKS };
};

/** The proposed hand as the player takes it: whole tenths of a millisecond. */
export const acceptHand = ({ hand, marks }: FittedHand, nowMs: number): OwnHand => ({
  start: milliseconds(Math.round(hand.start * 10) / 10),
  perBit: milliseconds(Math.round(hand.perBit * 10) / 10),
  marks,
  acceptedMs: nowMs,
});
