import fc from "fast-check";
import { expect, test } from "vitest";
import { difference } from "../../../src-renderer/geometry/difference.ts";

test("what was typed in the middle is what differs", () => {
  expect(difference("| G | D |", "| G | Em | D |")).toEqual({
    from: 6,
    removed: "",
    inserted: "Em | ",
  });
});

test("one of two equal characters taken out is one character", () => {
  expect(difference("::|", ":|")).toEqual({ from: 1, removed: ":", inserted: "" });
});

test("putting what differs into any text gives the other text", () => {
  const text = fc.string({ unit: fc.constantFrom("G", "D", "|", " ") });
  fc.assert(
    fc.property(text, text, (before, after) => {
      const { from, removed, inserted } = difference(before, after);
      expect(before.slice(from, from + removed.length)).toBe(removed);
      expect(before.slice(0, from) + inserted + before.slice(from + removed.length)).toBe(after);
    }),
  );
});
