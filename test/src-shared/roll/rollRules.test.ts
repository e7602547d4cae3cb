import { describe, expect, test } from "vitest";
import type {
  Pattern,
  PatternPick,
  PatternStroke,
  PickFinger,
  VoicedString,
} from "../../../src-shared/roll/pattern.ts";
import { breachesOf } from "../../../src-shared/roll/rollRules.ts";

const home = { T: 3, I: 2, M: 1 } as const;
const on = (finger: PickFinger, string: VoicedString = home[finger]): PatternPick => ({
  finger,
  on: string,
});
const strike = (...picks: readonly PatternPick[]): PatternStroke => ({
  picks,
  accent: false,
  damped: false,
});
const patternOf = (
  strokes: readonly PatternStroke[],
  meter: Pattern["meter"] = "4/4",
): Pattern => ({ name: "on trial", meter, strokes });

/** "TIM-": one finger an eighth on its home string, "-" a rest. */
const fingers = (letters: string, meter: Pattern["meter"] = "4/4"): Pattern =>
  patternOf(
    [...letters].map((letter) => (letter === "-" ? strike() : strike(on(letter as PickFinger)))),
    meter,
  );

describe("a pattern that obeys the hand", () => {
  test.each(["TIMTIMTM", "TM", "TIM-TI-M", "TMTIMITM", "T-"])("%s breaks no rule", (letters) => {
    expect(breachesOf(fingers(letters))).toEqual([]);
  });

  test("may rest on its last eighth after a pinch with the thumb, as a vamp does", () => {
    const pinch = strike(on("T"), on("I"), on("M"));
    expect(breachesOf(patternOf([strike(on("T", 4)), strike(), pinch, strike()]))).toEqual([]);
  });

  test("may sweep one finger over neighbouring strings, out of its own reach too", () => {
    const sweep = strike(on("T", 4), on("T", 3), on("T", 2), on("T", 1));
    expect(breachesOf(patternOf([sweep, strike()]))).toEqual([]);
    const withDrone = strike(on("T", "fifth"), on("T", 4), on("T", 3));
    expect(breachesOf(patternOf([withDrone, strike()]))).toEqual([]);
  });

  test("may be any part of a measure, or whole measures up to four of 4/4", () => {
    const rule = (length: number, meter: Pattern["meter"]) =>
      breachesOf(
        fingers(
          "TI"
            .repeat(32)
            .slice(0, length - 1)
            .concat("M"),
          meter,
        ),
      )
        .map((breach) => breach.rule)
        .filter((each) => each === "wrong-length");
    expect([3, 5, 8, 16, 32].flatMap((length) => rule(length, "4/4"))).toEqual([]);
    expect([6, 12, 18].flatMap((length) => rule(length, "3/4"))).toEqual([]);
    expect(rule(12, "4/4")).toEqual(["wrong-length"]);
    expect(rule(8, "6/8")).toEqual(["wrong-length"]);
    expect(rule(40, "4/4")).toEqual(["wrong-length"]);
  });
});

describe("a breach", () => {
  test("is found for each rule of the ends and of successive eighths, where it is", () => {
    expect(breachesOf(fingers("IIT"))).toEqual([
      { rule: "starts-off-thumb", eighth: 0 },
      { rule: "finger-twice", eighth: 1, finger: "I" },
      { rule: "ends-on-thumb", eighth: 2, finger: "T" },
    ]);
  });

  test("is a rest where the thumb should start", () => {
    expect(breachesOf(fingers("-TIM"))).toEqual([{ rule: "starts-off-thumb", eighth: 0 }]);
  });

  test("of a finger twice names every finger that two pinches share", () => {
    const pinch = strike(on("T"), on("I"), on("M"));
    const pair = strike(on("I"), on("M"));
    expect(breachesOf(patternOf([pinch, pair]))).toEqual([
      { rule: "finger-twice", eighth: 1, finger: "I" },
      { rule: "finger-twice", eighth: 1, finger: "M" },
    ]);
  });

  test("is a finger on a string that is not its own", () => {
    const outside = (pick: PatternPick) =>
      breachesOf(patternOf([strike(on("T")), strike(pick)])).filter(
        (breach) => breach.rule === "out-of-reach",
      );
    expect(outside(on("M", 3))).toEqual([{ rule: "out-of-reach", eighth: 1, finger: "M" }]);
    expect(outside(on("I", 1))).toEqual([{ rule: "out-of-reach", eighth: 1, finger: "I" }]);
    expect(outside(on("I", "fifth"))).toHaveLength(1);
    expect(outside(on("T", 1))).toHaveLength(1);
    expect(outside(on("I", 4))).toEqual([]);
  });

  test("is a pinch that one hand cannot strike at once", () => {
    const rules = (...picks: readonly PatternPick[]) =>
      breachesOf(patternOf([strike(...picks), strike()])).filter(
        (breach) => breach.rule === "not-one-stroke",
      );
    // One string twice, fingers crossed, one finger on strings that lie apart.
    expect(rules(on("T", 2), on("I", 2))).toEqual([{ rule: "not-one-stroke", eighth: 0 }]);
    expect(rules(on("T", 2), on("I", 3))).toEqual([{ rule: "not-one-stroke", eighth: 0 }]);
    expect(rules(on("T", 4), on("T", 2))).toEqual([
      { rule: "not-one-stroke", eighth: 0, finger: "T" },
    ]);
    expect(rules(on("T", "fifth"), on("I", 3), on("M", 1))).toEqual([]);
  });

  test("of nothing struck at all stands alone", () => {
    expect(breachesOf(fingers("----"))).toEqual([{ rule: "empty", eighth: 0 }]);
  });
});
