import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cutText,
  plainType,
  setText,
  strongType,
  widthOf,
  wrapText,
} from "../../../src-shared/sheet/setText.ts";
import { typefaces } from "./printing.ts";

const anyWords = fc.array(fc.lorem({ maxCount: 1 }), { maxLength: 60 }).map((all) => all.join(" "));

describe("set text", () => {
  test("in lines has every word, in order, and no line wider than its room", () => {
    fc.assert(
      fc.property(anyWords, fc.integer({ min: 60, max: 500 }), (text, width) => {
        const type = plainType(11);
        const lines = wrapText(typefaces, text, type, width);
        expect(lines.join(" ").trim()).toBe(text.trim());
        expect(lines.filter((each) => widthOf(typefaces, each, type) > width)).toEqual([]);
      }),
    );
  });

  test("keeps line breaks, and cuts a word that is wider than its line", () => {
    const type = plainType(11);
    expect(wrapText(typefaces, "one\n\ntwo", type, 300)).toEqual(["one", "", "two"]);
    const lines = wrapText(typefaces, "m".repeat(80), type, 100);
    expect(lines.length).toBeGreaterThan(5);
    expect(lines.join("")).toBe("m".repeat(80));
  });

  test("is cut with an ellipsis where it is too long, and not at all where it fits", () => {
    const type = strongType(12);
    expect(cutText(typefaces, "Short", type, 200)).toBe("Short");
    const cut = cutText(typefaces, "A rather long title for so little room", type, 90);
    expect(cut).toMatch(/^A rather.*…$/);
    expect(widthOf(typefaces, cut, type)).toBeLessThanOrEqual(90);
  });

  test("prints flats, sharps, a diminished ring and a major triangle, each from a font that has it", () => {
    expect(typefaces.missing("B♭ F♯ C° CΔ Cø7 Łódź Дом Ελλάς")).toEqual([]);
    expect(typefaces.missing("夜 G 夜")).toEqual(["夜"]);
    const marks = setText(typefaces, "B♭m7♭5", strongType(12), 0, 0);
    expect(marks.map(({ text }) => text)).toEqual(["B", "♭", "m7", "♭", "5"]);
    expect(marks.filter(({ font }) => font === "music").length).toBe(2);
    expect(setText(typefaces, "a夜", plainType(10), 0, 0).map(({ text }) => text)).toEqual(["a?"]);
  });

  test("ends where it should when it is set to the right or to the middle", () => {
    const type = plainType(10);
    const width = widthOf(typefaces, "Bars", type);
    expect(setText(typefaces, "Bars", type, 100, 0, "right")[0]?.x).toBeCloseTo(100 - width, 6);
    expect(setText(typefaces, "Bars", type, 100, 0, "middle")[0]?.x).toBeCloseTo(
      100 - width / 2,
      6,
    );
  });
});
