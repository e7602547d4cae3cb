import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { countChanges, lineChanges } from "../../../src-renderer/geometry/lineChanges.ts";

describe("what is different in an earlier version", () => {
  test("is said line by line: what comes back, what goes away, what stays", () => {
    const changes = lineChanges("Title: Ferry\n| G |\n| C |\n", "Title: Ferry\n| D |\n| C |\n");
    expect(changes).toEqual([
      { kind: "same", lines: ["Title: Ferry"] },
      { kind: "away", lines: ["| G |"] },
      { kind: "back", lines: ["| D |"] },
      { kind: "same", lines: ["| C |"] },
    ]);
    expect(countChanges(changes)).toEqual({ back: 1, away: 1 });
  });

  test("leaves each text whole, whatever the two are", () => {
    const text = fc
      .array(fc.constantFrom("| G |", "| C |", "", "Key: D"), { maxLength: 30 })
      .map((lines) => lines.map((line) => `${line}\n`).join(""));
    fc.assert(
      fc.property(text, text, (now, then) => {
        const changes = lineChanges(now, then);
        const without = (gone: string): string =>
          changes
            .filter(({ kind }) => kind !== gone)
            .flatMap(({ lines }) => lines.map((line) => `${line}\n`))
            .join("");
        expect(without("back")).toBe(now);
        expect(without("away")).toBe(then);
      }),
    );
  });
});
