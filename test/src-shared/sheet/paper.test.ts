import { describe, expect, test } from "vitest";
import { paperNamed, papers, usualPaper } from "../../../src-shared/sheet/paper.ts";

describe("paper", () => {
  test("is 210 by 297 mm for A4 (ISO 216) and 8.5 by 11 inches for Letter (ANSI/ASME Y14.1)", () => {
    // 1 inch is 25.4 mm and 72 points; 595.28 x 841.89 and 612 x 792 are what PDF writers print.
    expect(paperNamed("a4").width).toBeCloseTo(595.28, 2);
    expect(paperNamed("a4").height).toBeCloseTo(841.89, 2);
    expect(paperNamed("letter")).toEqual({ name: "letter", width: 612, height: 792 });
    expect(papers.map(({ name }) => name)).toEqual(["a4", "letter"]);
  });

  test("is Letter where people have Letter in their printers, else A4", () => {
    expect(["en-US", "fr-CA", "es-MX", "EN-us"].map(usualPaper)).toEqual(Array(4).fill("letter"));
    expect(["en-GB", "de", "ja-JP", "zh-Hant-TW", "en", ""].map(usualPaper)).toEqual(
      Array(6).fill("a4"),
    );
  });
});
