import fc from "fast-check";
import * as v from "valibot";
import { describe, expect, test } from "vitest";
import { mended } from "../../../src-shared/roll/mend.ts";
import { type Pattern, patternSchema } from "../../../src-shared/roll/pattern.ts";
import { breachesOf } from "../../../src-shared/roll/rollRules.ts";
import { anyPattern } from "../../laws/anyPattern.ts";

const home = { T: 3, I: 2, M: 1 } as const;
const fingers = (letters: string, meter: Pattern["meter"] = "4/4"): Pattern => ({
  name: "on trial",
  meter,
  strokes: [...letters].map((letter) => ({
    picks:
      letter === "T" || letter === "I" || letter === "M"
        ? [{ finger: letter, on: home[letter] }]
        : [],
    accent: false,
    damped: false,
  })),
});
const spelled = (pattern: Pattern | null) =>
  pattern?.strokes
    .map(({ picks }) => picks.map(({ finger, on }) => `${finger}${on}`).join("+") || "-")
    .join(" ");
const firstMend = (pattern: Pattern): Pattern | null => {
  const [breach] = breachesOf(pattern);
  return breach ? mended(pattern, breach) : null;
};

describe("mending a breach", () => {
  test("takes it away and makes no other, for every breach of every pattern", () => {
    fc.assert(
      fc.property(anyPattern, (pattern) => {
        const before = breachesOf(pattern);
        for (const breach of before) {
          const after = mended(pattern, breach);
          if (!after) throw new Error("a breach was not mended");
          expect(v.is(patternSchema, after)).toBe(true);
          const left = breachesOf(after);
          expect(left).not.toContainEqual(breach);
          expect(left.length).toBeLessThan(before.length);
        }
      }),
      { numRuns: 300 },
    );
  });

  test("again and again ends with a pattern that breaks no rule", () => {
    fc.assert(
      fc.property(anyPattern, (pattern) => {
        const most = breachesOf(pattern).length;
        let now = pattern;
        for (let times = 0; times < most; times += 1) {
          now = firstMend(now) ?? now;
        }
        expect(breachesOf(now)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  test("leaves name, meter and the eighths apart from the breach as they are", () => {
    fc.assert(
      fc.property(anyPattern, (pattern) => {
        const twice = breachesOf(pattern).find(({ rule }) => rule === "finger-twice");
        const after = twice ? mended(pattern, twice) : pattern;
        expect([after?.name, after?.meter]).toEqual([pattern.name, pattern.meter]);
        const changed = pattern.strokes.filter((stroke, at) => stroke !== after?.strokes[at]);
        expect(changed.length).toBeLessThanOrEqual(2);
      }),
    );
  });

  test("is nothing where there is no such breach", () => {
    expect(mended(fingers("TIM"), { rule: "finger-twice", eighth: 1, finger: "I" })).toBeNull();
  });

  // Worked out by hand from the rules: another finger on the string, else one on its own string.
  test.each([
    ["TIIM", "T3 I2 T2 M1"],
    ["TITTIM", "T3 I2 T3 M1 I2 M1"],
    ["IMTM", "T2 M1 T3 M1"],
    ["TIT", "T3 I2 M1"],
  ])("%s becomes %s", (letters, becomes) => {
    let now = fingers(letters);
    while (breachesOf(now).length > 0) now = firstMend(now) ?? now;
    expect(spelled(now)).toBe(becomes);
  });

  test("of a length fills the last measure up with rests", () => {
    const long = fingers("TIMTIMTIMTIM");
    expect(spelled(firstMend(long))).toMatch(/^(T3 I2 M1 ){4}- - - -$/);
  });

  test("of a length past four measures cuts the pattern at the last that is whole", () => {
    const long = fingers("TIM".repeat(11).slice(0, 32), "6/8");
    expect(firstMend(long)?.strokes).toHaveLength(30);
    expect(firstMend(fingers("TIM".repeat(8).slice(0, 20)))?.strokes).toHaveLength(24);
  });

  test("of a start without the thumb puts the thumb nearby", () => {
    expect(spelled(firstMend(fingers("IM")))).toBe("T2 M1");
    expect(spelled(firstMend(fingers("-IM")))).toBe("T3 I2 M1");
  });

  test("of an end on the thumb gives the eighth to the finger beside, or a rest", () => {
    expect(spelled(firstMend(fingers("TIMT")))).toBe("T3 I2 M1 I3");
  });

  // Worked out by hand: what would be a smaller change breaks another rule.
  test.each([
    // T and I on string 4 strike twice; M goes to the nearer of its own strings.
    ["T3 M4 I2", "T3 M2 I2"],
    // The middle finger stays out of the pinch rather than the whole next eighth.
    ["T3 I2+M1 M1", "T3 I2 M1"],
    // The thumb has just struck: the pinch keeps its other finger.
    ["T3 T4+I2 M1", "T3 I2 M1"],
    // Two picks on one string part by one string.
    ["T3 I2+M2", "T3 I3+M2"],
    ["T3 M1 T3+I3 M1", "T3 M1 T4+I3 M1"],
    // The thumb takes the nearest string that leaves the start its own.
    ["- M1", "T3 M1"],
    ["Tfifth I2 T3+M1", "Tfifth I2 M1"],
  ])("%s becomes %s", (from, to) => {
    const strokes = from.split(" ").map((eighth) => ({
      picks:
        eighth === "-"
          ? []
          : eighth.split("+").map((pick) => ({
              finger: pick.charAt(0) as "T" | "I" | "M",
              on: pick.slice(1) === "fifth" ? ("fifth" as const) : (Number(pick.slice(1)) as 1),
            })),
      accent: true,
      damped: true,
    }));
    const after = firstMend({ name: "on trial", meter: "4/4", strokes });
    expect(spelled(after)).toBe(to);
    expect(after?.strokes.slice(1)).toSatisfy((left: Pattern["strokes"]) =>
      left.every(({ accent, damped }) => accent && damped),
    );
  });

  test("of the last of 32 eighths adds none", () => {
    const long = fingers("TIM".repeat(11).slice(0, 32).replace(/.$/, "T"));
    const after = firstMend(long);
    expect(after?.strokes).toHaveLength(32);
    expect(breachesOf(after ?? long)).toEqual([]);
  });
});
