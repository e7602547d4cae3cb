import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { eighthsOfMeter } from "../../../src-shared/roll/beats.ts";
import {
  fingersAt,
  fingersFor,
  freeName,
  lengthsOf,
  nextFinger,
  rest,
  voicedStrings,
  withLength,
  withMark,
  withMeter,
  withPick,
  withStroke,
} from "../../../src-shared/roll/editPattern.ts";
import { type Pattern, patternMeters } from "../../../src-shared/roll/pattern.ts";
import { reachOf } from "../../../src-shared/roll/rollRules.ts";
import { anyPattern } from "../../laws/anyPattern.ts";

const silent = (eighths: number, meter: Pattern["meter"] = "4/4"): Pattern => ({
  name: "on trial",
  meter,
  strokes: Array.from({ length: eighths }, () => rest),
});
const anyCell = fc.tuple(fc.nat(31), fc.constantFrom(...voicedStrings));
const anyFinger = fc.constantFrom("T" as const, "I" as const, "M" as const, null);

describe("a pick put into a pattern", () => {
  test("is there afterwards, and nothing else has changed", () => {
    fc.assert(
      fc.property(anyPattern, anyCell, anyFinger, (pattern, [at, on], finger) => {
        const eighth = at % pattern.strokes.length;
        const after = withPick(pattern, eighth, on, finger);
        expect(fingersAt(after, eighth, on)).toEqual(finger === null ? [] : [finger]);
        for (const other of voicedStrings.filter((each) => each !== on)) {
          expect(fingersAt(after, eighth, other).toSorted()).toEqual(
            fingersAt(pattern, eighth, other).toSorted(),
          );
        }
        const elsewhere = (of: Pattern) => of.strokes.filter((_, index) => index !== eighth);
        expect(elsewhere(after)).toEqual(elsewhere(pattern));
      }),
    );
  });

  test("that is the last one of its eighth leaves a rest without accent", () => {
    const accented: Pattern = {
      ...silent(2),
      strokes: [{ picks: [{ finger: "T", on: 3 }], accent: true, damped: true }, rest],
    };
    expect(withPick(accented, 0, 3, null).strokes[0]).toEqual(rest);
  });
});

describe("clicking on a string", () => {
  test("puts its usual finger there first", () => {
    expect(voicedStrings.map((on) => nextFinger(silent(4), 1, on))).toEqual([
      "M",
      "I",
      "T",
      "T",
      "T",
    ]);
  });

  test("puts another in reach where the usual one strikes just before or after", () => {
    expect(nextFinger(withPick(silent(4), 0, 2, "I"), 1, 2)).toBe("T");
    expect(nextFinger(withPick(silent(4), 2, 3, "T"), 1, 3)).toBe("I");
  });

  test("again and again goes through every finger in reach once, then none", () => {
    fc.assert(
      fc.property(anyPattern, anyCell, (pattern, [at, on]) => {
        const eighth = at % pattern.strokes.length;
        let now = withPick(pattern, eighth, on, null);
        const seen: string[] = [];
        for (
          let finger = nextFinger(now, eighth, on);
          finger;
          finger = nextFinger(now, eighth, on)
        ) {
          seen.push(finger);
          now = withPick(now, eighth, on, finger);
        }
        expect(seen.toSorted()).toEqual([...fingersFor(on)].toSorted());
      }),
    );
  });

  test("never puts a finger out of its reach", () => {
    for (const on of voicedStrings) {
      expect(fingersFor(on).every((finger) => reachOf[finger].includes(on))).toBe(true);
    }
  });
});

describe("another length", () => {
  test("keeps the eighths that are left and adds rests", () => {
    fc.assert(
      fc.property(anyPattern, fc.integer({ min: 1, max: 32 }), (pattern, length) => {
        const { strokes } = withLength(pattern, length);
        expect(strokes).toHaveLength(length);
        expect(strokes.slice(0, pattern.strokes.length)).toEqual(pattern.strokes.slice(0, length));
        expect(strokes.slice(pattern.strokes.length).every(({ picks }) => picks.length === 0)).toBe(
          true,
        );
      }),
    );
  });

  test("of 1 to 32 eighths is all there is", () => {
    expect(withLength(silent(4), 0).strokes).toHaveLength(1);
    expect(withLength(silent(4), 99).strokes).toHaveLength(32);
  });
});

describe("another meter", () => {
  test.each([
    [8, "4/4", "3/4", 6],
    [12, "3/4", "4/4", 16],
    [3, "3/4", "2/4", 3],
    [5, "6/8", "2/4", 4],
    [32, "2/4", "4/4", 32],
  ] as const)("of %i eighths from %s to %s gives %i", (length, from, to, eighths) => {
    const { meter, strokes } = withMeter(silent(length, from), to);
    expect([meter, strokes.length]).toEqual([to, eighths]);
  });
});

test("the lengths of a meter are parts of a measure and whole measures, up to 32 eighths", () => {
  for (const meter of patternMeters) {
    const measure = eighthsOfMeter[meter];
    const lengths = lengthsOf(meter);
    expect(lengths).toEqual([...new Set(lengths)].toSorted((a, b) => a - b));
    expect(lengths.every((each) => each < measure || each % measure === 0)).toBe(true);
    expect([lengths[0], Math.max(...lengths) + measure > 32]).toEqual([2, true]);
  }
});

test("a free name is the name itself, or one that nobody has, of at most 60 characters", () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom("Weir", "Weir 2", "Weir 3")), (taken) => {
      expect(taken).not.toContain(freeName("Weir", taken));
    }),
  );
  const long = "W".repeat(60);
  expect(freeName(long, [long])).toHaveLength(57);
  expect(freeName(" Weir ", [])).toBe("Weir");
});

test("a name keeps within 60 characters and is numbered anew from its stem", () => {
  expect(freeName(`${"W".repeat(59)}  x`, [])).toBe("W".repeat(59));
  expect(freeName("Weir 7", ["Weir 7"])).toBe("Weir 2");
  expect(freeName("Weir 12", ["Weir 12", "Weir 2"])).toBe("Weir 3");
  expect(freeName("Weir 2 gate", ["Weir 2 gate"])).toBe("Weir 2 gate 2");
  const spaced = `${"W".repeat(54)} gate`;
  expect(freeName(spaced, [spaced])).toBe(`${"W".repeat(54)} 2`);
});

describe("an accent or damping", () => {
  const two = withPick(silent(2), 0, 3, "T");

  test("is put on an eighth and taken off again, each by itself", () => {
    const accented = withMark(two, 0, "accent");
    expect(accented.strokes[0]).toMatchObject({ accent: true, damped: false });
    expect(withMark(accented, 0, "damped").strokes[0]).toMatchObject({
      accent: true,
      damped: true,
    });
    expect(withMark(accented, 0, "accent")).toEqual(two);
  });

  test("is taken by no rest, and by nothing past the end", () => {
    expect(withMark(two, 1, "accent")).toBe(two);
    expect(withMark(two, 2, "accent")).toBe(two);
    expect(withMark(silent(1), 0, "damped")).toEqual(silent(1));
  });
});

test("the picks of an eighth stand in order of the strings, the lowest first", () => {
  const high = withPick(withPick(withPick(silent(1), 0, 1, "M"), 0, "fifth", "T"), 0, 3, "I");
  expect(high.strokes[0]?.picks.map(({ on }) => on)).toEqual(["fifth", 3, 1]);
});

test("an eighth that is not there has no fingers and no finger to click on it, and stays away", () => {
  expect(fingersAt(silent(2), 2, 1)).toEqual([]);
  const odd = withStroke(silent(2), 2, () => ({ picks: [], accent: true, damped: true }));
  expect(odd).toEqual(silent(2));
});

test("the usual finger of a string comes before the others in reach", () => {
  expect(voicedStrings).toEqual([1, 2, 3, 4, "fifth"]);
  expect(voicedStrings.map((on) => fingersFor(on)[0])).toEqual(["M", "I", "T", "T", "T"]);
});

test("a pattern of the longest length keeps to the longest of another meter", () => {
  expect(withMeter(silent(32, "4/4"), "3/4").strokes).toHaveLength(24);
  expect(withMeter(silent(32, "2/4"), "6/8").strokes).toHaveLength(30);
});
