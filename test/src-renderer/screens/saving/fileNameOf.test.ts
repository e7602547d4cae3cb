import fc from "fast-check";
import { expect, test } from "vitest";
import { fileNameOf } from "../../../../src-renderer/screens/saving/fileNameOf.ts";

test.each([
  ["Otter Ford", "Otter Ford.mid"],
  ["Weir / Willow: a <waltz>?", "Weir Willow a waltz.mid"],
  ["../..", "Song.mid"],
  ["", "Song.mid"],
  ["Éowin’s Ferry.", "Éowin’s Ferry.mid"],
])("the title %j gives the file %j", (title, expected) => {
  expect(fileNameOf(title, "mid")).toBe(expected);
});

test("any title gives a name without a path, of at most 100 characters and its ending", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 300 }), (title) => {
      const name = fileNameOf(title, "txt");
      expect(name).toMatch(/^[^\p{Cc}\\/:*?"<>|]+\.txt$/u);
      expect([...name].length).toBeLessThanOrEqual(104);
      expect(name).not.toMatch(/^[. ]/);
    }),
  );
});
