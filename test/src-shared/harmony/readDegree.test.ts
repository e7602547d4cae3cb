import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { degreeSymbol } from "../../../src-shared/harmony/degree.ts";
import { looksLikeDegree, readDegree } from "../../../src-shared/harmony/readDegree.ts";

const wordsOf = (symbol: string) => {
  const reading = readDegree(symbol);
  return reading.ok ? degreeSymbol(reading.chord) : `${reading.says} ${reading.try}`;
};

describe("a chord by degree", () => {
  test("is written with a hyphen only before a quality that starts with a figure", () => {
    const typed = ["4", "6m", "2min7", "5-7", "5maj7", "4-6", "5-m7", "b7", "#4dim7", "1/3", "♭7"];
    expect(typed.map(wordsOf)).toEqual([
      "4",
      "6m",
      "2m7",
      "5-7",
      "5maj7",
      "4-6",
      "5m7",
      "b7",
      "#4dim7",
      "1/3",
      "b7",
    ]);
  });

  test("over its own degree is no slash chord", () => {
    expect(wordsOf("4/4")).toBe("4");
  });

  const refusals: Readonly<Record<string, string>> = {
    "57": "57 could be one chord or two. Write 5-7 for one chord, or 5 7 for two.",
    "46": "46 could be one chord or two. Write 4-6 for one chord, or 4 6 for two.",
    "5^7": "5^7 is written with a hyphen here. Write 5-7.",
    "1451": "Degrees need white space between them. Write 1 4 5 1.",
    "1b7": "Degrees need white space between them. Write 1 b7.",
    "8": "There is no degree 8. Degrees go from 1 to 7.",
    "0": "There is no degree 0. Degrees go from 1 to 7.",
    "6-": "6- stops at the hyphen. Write 6m for minor, or 6-7.",
    "2x": '"2x" is not a chord. Write 2, 2m or 2-7.',
    "1/B": '"1/B" has no degree after the slash. The bass of a degree is a degree too, as in 1/3.',
    "1/9": '"1/9" has no degree after the slash. The bass of a degree is a degree too, as in 1/3.',
    b: '"b" is not a degree. Write a figure from 1 to 7, as in 4, 6m or b7.',
  };
  for (const [symbol, words] of Object.entries(refusals)) {
    test(`is refused in words: ${symbol}`, () => {
      expect(wordsOf(symbol)).toBe(words);
    });
  }

  test("is told from a chord by letter", () => {
    expect(["b7", "#4", "1", "Bb7", "F#", "b", "N.C."].map(looksLikeDegree)).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
  });

  test("is refused or read, and never throws", () => {
    const scraps = ["1", "5", "7", "b", "#", "-", "^", "/", "m", "maj", "9", "("];
    const near = fc.array(fc.constantFrom(...scraps), { maxLength: 8 }).map((all) => all.join(""));
    fc.assert(
      fc.property(fc.oneof(near, fc.string({ unit: "binary" })), (symbol) => {
        expect(wordsOf(symbol)).not.toBe("");
      }),
      { numRuns: 2000 },
    );
  });
});
