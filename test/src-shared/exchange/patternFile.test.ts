import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  patternFileOf,
  readPatternFile,
  takenIn,
} from "../../../src-shared/exchange/patternFile.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { anyPattern } from "../../laws/anyPattern.ts";

const gate: Pattern = {
  name: "Tin gate",
  meter: "2/4",
  strokes: [
    { picks: [{ finger: "T", on: "fifth" }], accent: true, damped: false },
    { picks: [{ finger: "M", on: 1 }], accent: false, damped: false },
  ],
};
const problemOf = (text: string) => {
  const read = readPatternFile(text);
  if (read.ok) throw new Error("the file was read");
  return read.problem;
};
const fileWith = (pattern: unknown): string =>
  JSON.stringify({ shortslidePatterns: 1, patterns: [gate, pattern] });

describe("a file of patterns", () => {
  test("gives back whatever patterns were written into it", () => {
    fc.assert(
      fc.property(fc.array(anyPattern, { minLength: 1, maxLength: 8 }), (patterns) => {
        expect(readPatternFile(patternFileOf(patterns))).toEqual({ ok: true, patterns });
      }),
    );
  });

  test("is read after a byte order mark and with entries of others beside ours", () => {
    const marked = `\uFEFF${JSON.stringify({ by: "hand", shortslidePatterns: 1, patterns: [gate] })}`;
    expect(readPatternFile(marked)).toEqual({ ok: true, patterns: [gate] });
  });

  test("of any text is read or refused in words, and never throws", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const { says, try: advice } = problemOf(text);
        expect([says, advice]).toEqual([
          expect.stringMatching(/\.$/),
          expect.stringMatching(/\.$/),
        ]);
      }),
    );
  });

  test.each([
    ["not JSON", "Tin gate TIMT", "This file is not JSON, or is cut off."],
    ["cut off", patternFileOf([gate]).slice(0, 90), "This file is not JSON, or is cut off."],
    [
      "something else",
      '{"songs":[]}',
      "This file holds no patterns: it has no “shortslidePatterns”.",
    ],
    [
      "of a later version",
      '{"shortslidePatterns":2}',
      "This file is of a later version than this program.",
    ],
    [
      "without a list",
      '{"shortslidePatterns":1,"patterns":{}}',
      "The list “patterns” is not as it must be. Nothing was imported.",
    ],
    [
      "with a wrong meter",
      fileWith({ ...gate, name: "Low weir", meter: "7/8" }),
      "Pattern 2 (“Low weir”): “meter” is not as it must be. Nothing was imported.",
    ],
    [
      "with a wrong finger",
      fileWith({
        ...gate,
        strokes: [gate.strokes[0], { ...gate.strokes[1], picks: [{ finger: "A", on: 1 }] }],
      }),
      "Pattern 2 (“Tin gate”), eighth 2, pick 1: “finger” is not as it must be. Nothing was imported.",
    ],
    [
      "with a name of spaces",
      fileWith({ ...gate, name: "  " }),
      "Pattern 2: “name” is not as it must be. Nothing was imported.",
    ],
    [
      "with a number for a pattern",
      fileWith(7),
      "Pattern 2 is not as it must be. Nothing was imported.",
    ],
  ])("that is %s says what is wrong, and where", (_what, text, says) => {
    expect(problemOf(text).says).toBe(says);
  });

  test("says what would be right", () => {
    expect(problemOf(fileWith({ ...gate, meter: "7/8" })).try).toBe(
      "It must be one of 4/4, 3/4, 2/4, 6/8 and 9/8. Mend the file, or export it again.",
    );
  });
});

describe("patterns taken in", () => {
  test("keep every pattern there was, in order, and give each name once", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(anyPattern, { selector: ({ name }) => name, maxLength: 6 }),
        fc.array(anyPattern, { maxLength: 6 }),
        (own, others) => {
          const { patterns, known } = takenIn(own, others);
          expect(patterns.slice(0, own.length)).toEqual(own);
          expect(patterns).toHaveLength(own.length + others.length - known);
          expect(new Set(patterns.map(({ name }) => name)).size).toBe(patterns.length);
          expect(Math.max(0, ...patterns.map(({ name }) => name.length))).toBeLessThanOrEqual(60);
        },
      ),
    );
  });

  test("get another name where one's own has it, and are left out where they are the same", () => {
    const other: Pattern = { ...gate, meter: "4/4" };
    const { name, strokes, meter } = gate;
    const inOtherOrder: Pattern = { strokes, meter, name };
    const taken = takenIn([gate], [other, inOtherOrder, { ...other, meter: "3/4" }]);
    expect(taken.patterns.map((pattern) => [pattern.name, pattern.meter])).toEqual([
      ["Tin gate", "2/4"],
      ["Tin gate 2", "4/4"],
      ["Tin gate 3", "3/4"],
    ]);
    expect(taken.renamed).toEqual([
      { from: "Tin gate", to: "Tin gate 2" },
      { from: "Tin gate", to: "Tin gate 3" },
    ]);
    expect(taken.known).toBe(1);
  });
});
