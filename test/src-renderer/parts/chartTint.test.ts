import fc from "fast-check";
import { expect, test } from "vitest";
import { tintsOf } from "../../../src-renderer/parts/chartTint.ts";

const words = (text: string) =>
  tintsOf(text).map(({ from, to, kind }) => [kind, text.slice(from, to)]);

test("header names stand out, their values do not", () => {
  expect(words("Key: Bb  Capo: 3")).toEqual([
    ["header-name", "Key:"],
    ["header-name", "Capo:"],
  ]);
});

test("labels, bar lines, endings and remarks each have their tint", () => {
  expect(words("[Verse] |: G |1 C :|2 D | # again")).toEqual([
    ["label", "[Verse]"],
    ["bar-line", "|:"],
    ["bar-line", "|"],
    ["ending", "1"],
    ["bar-line", ":|"],
    ["ending", "2"],
    ["bar-line", "|"],
    ["comment", "# again"],
  ]);
});

test("a figure that touches a bar line is a degree where no second ending follows", () => {
  expect(words("|1 4|\n|5 1|").map(([kind]) => kind)).toEqual(
    Array.from({ length: 4 }, () => "bar-line"),
  );
});

test("in any text the tints lie in order within the text, none empty", () => {
  fc.assert(
    fc.property(fc.string({ unit: "grapheme" }), (text) => {
      let end = 0;
      for (const tint of tintsOf(text)) {
        expect(tint.from).toBeGreaterThanOrEqual(end);
        expect(tint.to).toBeGreaterThan(tint.from);
        end = tint.to;
      }
      expect(end).toBeLessThanOrEqual(text.length);
    }),
  );
});
