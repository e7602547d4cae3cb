import { describe, expect, test } from "vitest";
import { struckBy } from "../../../src-shared/roll/homeString.ts";
import { type Pattern, patternMeters } from "../../../src-shared/roll/pattern.ts";
import { styleNames } from "../../../src-shared/roll/picking.ts";
import { breachesOf, fingersTwice } from "../../../src-shared/roll/rollRules.ts";
import { familyIn, patternsOf } from "../../../src-shared/roll/rollTable.ts";
import { fret } from "../../../src-shared/units.ts";
import type { Voicing } from "../../../src-shared/voicing/voicing.ts";

const fingersOf = ({ strokes }: Pattern): string =>
  strokes.map(({ picks }) => picks.map(({ finger }) => finger).join("")).join(" ");

const five = fret(5);
const onStrings = (frets: Voicing["frets"]): Pick<Voicing, "frets"> => ({ frets });
const three = onStrings([five, five, five, null, null]) as Voicing;
const inner = onStrings([null, five, five, five, null]) as Voicing;
const four = onStrings([five, five, five, five, null]) as Voicing;

/** The strings that a pattern strikes in a voicing, an eighth a word. */
const stringsIn = ({ strokes }: Pattern, voicing: Voicing): string =>
  strokes
    .map((stroke) => struckBy(stroke, voicing).map(({ string }) => string))
    .map((strings) => (strings.length === 0 ? "-" : strings.join("")))
    .join(" ");

const measureOf = (
  style: (typeof styleNames)[number],
  meter: Pattern["meter"] = "4/4",
): Pattern => {
  const measure = familyIn(style, meter).wholes.at(-1);
  if (!measure) {
    throw new Error(`${style} has no measure of ${meter}`);
  }
  return measure;
};

const all = styleNames.flatMap((style) =>
  patternMeters.flatMap((meter) => patternsOf(style, meter)),
);

describe("every pattern", () => {
  test("breaks no rule", () => {
    // But that parts which join a single eighth to a measure are longer than it.
    for (const pattern of all) {
      expect(
        breachesOf(pattern).filter(({ rule }) => rule !== "wrong-length"),
        pattern.name,
      ).toEqual([]);
    }
  });

  test("joins to every other without striking a finger twice running", () => {
    for (const first of all) {
      for (const second of all) {
        expect(fingersTwice([...first.strokes, ...second.strokes])).toEqual([]);
      }
    }
  });

  test("has its accents on what carries the meter: 1 and 3 in 4/4, each dotted quarter in 6/8 and 9/8, else 1", () => {
    const every = { "4/4": 4, "3/4": 6, "2/4": 4, "6/8": 3, "9/8": 3 };
    for (const { meter, strokes, name } of all) {
      for (const [eighth, { accent, picks }] of strokes.entries()) {
        expect(accent, name).toBe(eighth % every[meter] === 0 && picks.length > 0);
      }
    }
  });

  test("of one measure in 4/4 is the second half of the two-measure pattern", () => {
    // Common practice, no published source.
    for (const style of styleNames) {
      const [two, one] = familyIn(style, "4/4").wholes;
      expect(one?.strokes).toEqual(two?.strokes.slice(8));
    }
  });

  test("of a style comes in every length that a part of a measure can have", () => {
    // A measure with a single eighth before and behind it is one part: eleven eighths in 9/8.
    for (const style of styleNames) {
      const { parts } = familyIn(style, "9/8");
      if (typeof parts !== "string") {
        expect([...parts.keys()]).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
        for (const [length, { strokes }] of parts) {
          expect(strokes).toHaveLength(length);
        }
      }
    }
  });
});

describe("the standard rolls, with the fifth string", () => {
  // As method books print them in open G, eight eighths to a measure: common practice.
  test.each([
    ["forward", "3 2 1 5 2 1 5 1"],
    ["forward-reverse", "3 2 1 5 1 2 3 1"],
  ] as const)("%s is %s on the top three strings", (style, strings) => {
    expect(stringsIn(measureOf(style), three)).toBe(strings);
  });

  test("alternating thumb is 3 2 5 1 4 2 5 1 on four strings, its 4 a 3 where there are three", () => {
    expect(stringsIn(measureOf("alternating-thumb"), four)).toBe("3 2 5 1 4 2 5 1");
    expect(stringsIn(measureOf("alternating-thumb"), three)).toBe("3 2 5 1 3 2 5 1");
  });

  test("backward goes round by 1 2 5, the thumb on 3 at its start", () => {
    expect(stringsIn(measureOf("backward"), three)).toBe("3 1 2 5 1 2 5 2");
  });

  test("in 3/4 are 3 2 1 5 2 1, 3 2 1 5 1 2 and 3 2 5 1 2 1", () => {
    // Derived from the rolls above; no published source.
    expect(stringsIn(measureOf("forward", "3/4"), three)).toBe("3 2 1 5 2 1");
    expect(stringsIn(measureOf("forward-reverse", "3/4"), three)).toBe("3 2 1 5 1 2");
    expect(stringsIn(measureOf("alternating-thumb", "3/4"), three)).toBe("3 2 5 1 2 1");
  });

  test("have the fingers of the method books", () => {
    expect(fingersOf(measureOf("forward"))).toBe("T I M T I M T M");
    expect(fingersOf(measureOf("forward-reverse"))).toBe("T I M T M I T M");
    expect(fingersOf(measureOf("alternating-thumb"))).toBe("T I T M T I T M");
    expect(fingersOf(measureOf("forward", "3/4"))).toBe("T I M T I M");
  });

  test("cross the bar line by threes in the forward roll of two measures", () => {
    const [two] = familyIn("forward", "4/4").wholes;
    expect(two && fingersOf(two)).toBe("T I M T I M T I T I M T I M T M");
  });
});

describe("strings", () => {
  test("lie one lower on 4-3-2, and the thumb goes down to 4 where there are four", () => {
    const roll = measureOf("forward");
    expect(stringsIn(roll, inner)).toBe("4 3 2 5 3 2 5 2");
    expect(stringsIn(roll, four)).toBe("4 2 1 5 2 1 5 1");
  });

  test("of a vamp are the lowest one, then a damped pinch of 3-2-1", () => {
    const vamp = measureOf("vamp");
    expect(stringsIn(vamp, four)).toBe("4 - 321 - 4 - 321 -");
    expect(stringsIn(vamp, three)).toBe("3 - 321 - 3 - 321 -");
    expect(stringsIn(measureOf("vamp", "3/4"), three)).toBe("3 - 321 - 321 -");
    expect(vamp.strokes.map(({ damped }) => damped)).toEqual(
      [0, 0, 1, 0, 0, 0, 1, 0].map((is) => is === 1),
    );
  });

  test("of a strum are all that the voicing has, each once", () => {
    const strum = measureOf("strum");
    expect(stringsIn(strum, four)).toBe("4321 - - - 4321 - - -");
    expect(stringsIn(strum, inner)).toBe("432 - - - 432 - - -");
  });
});
