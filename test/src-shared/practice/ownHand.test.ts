import * as v from "valibot";
import { describe, expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { fretDistance } from "../../../src-shared/neck/fretDistance.ts";
import { handMarksOf } from "../../../src-shared/practice/handMark.ts";
import {
  acceptHand,
  FIVE_FRETS_BITS,
  type HandAnswer,
  handAnswerSchema,
  MORE_MARKS,
  noAnswer,
  proposeHand,
} from "../../../src-shared/practice/ownHand.ts";
import { handTable } from "../../../src-shared/route/handTable.ts";
import { difficultyBits, landingWidth } from "../../../src-shared/route/movement.ts";
import {
  firstPreferences,
  preferencesSchema,
  wholeNeckPlan,
} from "../../../src-shared/settings.ts";
import { fret, millimetres, milliseconds } from "../../../src-shared/units.ts";
import { loggedRound } from "../../laws/loggedRound.ts";
import { chance, simulatedMarks } from "../../laws/simulatedMarks.ts";

const slow = simulatedMarks(handTable.learner, 60, 0.05, chance(21));

describe("a hand", () => {
  test("is proposed from twenty marks of both kinds, and not before", () => {
    expect(proposeHand(slow.slice(0, 19), handTable.usual, null).kind).toBe("too-few");
    const clean = slow.map((mark) => ({ ...mark, clean: 1, notYet: 0 }));
    expect(proposeHand(clean, handTable.usual, null)).toEqual({
      kind: "too-few",
      clean: 60,
      notYet: 0,
    });
    expect(proposeHand(slow, handTable.usual, null)).toMatchObject({
      kind: "differs",
      refused: false,
    });
  });

  test("is left in peace where it is what the marks tell", () => {
    const { hand } = acceptedFrom(slow);
    expect(proposeHand(slow, hand, null).kind).toBe("fits");
  });

  test("that was refused is proposed again when there are twenty more marks", () => {
    expect(proposeHand(slow, handTable.usual, MORE_MARKS - 1)).toMatchObject({ refused: true });
    expect(proposeHand(slow, handTable.usual, MORE_MARKS)).toMatchObject({ refused: false });
  });

  test("is accepted in tenths of a millisecond, and kept as it was accepted", () => {
    const { own } = acceptedFrom(slow);
    const answer: HandAnswer = { own, refusedMs: null };
    expect(v.parse(handAnswerSchema, JSON.parse(JSON.stringify(answer)))).toEqual(answer);
    expect(own.start * 10).toBeCloseTo(Math.round(own.start * 10), 9);
  });

  test("is not known to preferences of an earlier version, which are read all the same", () => {
    const { hand: _, ...earlier } = firstPreferences;
    expect(v.parse(preferencesSchema, earlier).hand).toEqual(noAnswer);
  });

  test("that would move in no time is refused", () => {
    const broken = { own: { start: -90, perBit: 60, marks: 40, acceptedMs: 5 }, refusedMs: null };
    expect(v.is(handAnswerSchema, broken)).toBe(false);
  });

  test("changes what a song's changes need where the song leaves the hand to the player", () => {
    const text = "Key: G\nTempo: 90\n\n| G | A | G | A |";
    const own = { start: milliseconds(95), perBit: milliseconds(120) };
    const needs = (hand: typeof wholeNeckPlan.hand) =>
      chartToScore(text, { ...wholeNeckPlan, hand }, null, undefined, [], own).route?.legs.map(
        ({ need }) => need,
      );
    const plain = chartToScore(text, wholeNeckPlan, null).route?.legs.map(({ need }) => need);
    expect(needs("default")).not.toEqual(plain);
    expect(needs("usual")).toEqual(plain);
    expect(Math.min(...(needs("default") ?? []))).toBeGreaterThan(Math.max(...(plain ?? [])));
  });

  test("is compared by five frets up from the fifth", () => {
    const scale = millimetres(666.75);
    const way = fretDistance(fret(10), scale) - fretDistance(fret(5), scale);
    const bits = difficultyBits(millimetres(way), landingWidth(fret(10), scale));
    expect(bits).toBeCloseTo(FIVE_FRETS_BITS, 2);
  });
});

const acceptedFrom = (marks: typeof slow) => {
  const proposal = proposeHand(marks, handTable.usual, null);
  if (proposal.kind === "too-few") {
    throw new Error("nothing is proposed");
  }
  const own = acceptHand(proposal.fit, 1_770_000_000_000);
  return { own, hand: proposal.fit.hand };
};

describe("marks that tell of the hand", () => {
  test("are those of one change for which the hand travels, without what re-forming takes", () => {
    const shift = { bits: 2.4, reformed: 2, window: milliseconds(310) };
    const log = [
      loggedRound("a", { shift }),
      loggedRound("b", { shift, mark: "not-yet" }),
      loggedRound("c", { shift, mark: null }),
      loggedRound("d", { shift: null }),
      loggedRound("e", { shift: { ...shift, bits: 0 } }),
    ];
    expect(handMarksOf(log)).toEqual([{ bits: 2.4, window: 210, clean: 1, notYet: 1 }]);
  });

  test("are the newest four hundred", () => {
    const log = Array.from({ length: 430 }, (_, index) =>
      loggedRound(`${index}`, { atMs: 1000 * index, mark: index < 30 ? "not-yet" : "clean" }),
    );
    expect(handMarksOf(log.toReversed())).toMatchObject([{ clean: 400, notYet: 0 }]);
  });
});
