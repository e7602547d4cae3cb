import { describe, expect, test } from "vitest";
import { writePdf } from "../../../src-shared/sheet/writePdf.ts";
import { fonts, isText, printed, toHandOut } from "./printing.ts";
import { readPdf, runAt } from "./readPdf.ts";

const MADE = new Date("2026-03-01T12:00:00Z");
const chart = `Title: Łąka Lane Δ
Key: Gb
Capo: 2
Time: 3/4
[Verse]
| Gb | Cb | Db7 | Ebm7b5 | Gb | F#dim7 | N.C. | Gb |
`;

describe("a hand-out as a PDF", () => {
  test("is read by another reader with every text of the model at its place", async () => {
    const book = printed([toHandOut(chart, "Softly.\nÀ la fin: lift.")], { paper: "letter" });
    const pdf = await readPdf(await writePdf(book, fonts, MADE));
    expect(pdf.title).toBe("Łąka Lane Δ");
    expect(pdf.pages.length).toBe(book.pages.length);
    for (const [index, { marks }] of book.pages.entries()) {
      const page = pdf.pages[index];
      expect([page?.width, page?.height]).toEqual([612, 792]);
      const wanted = marks.filter(isText).filter(({ text }) => text.trim() !== "");
      expect(wanted.length).toBeGreaterThan(20);
      let alone = 0;
      for (const { text, x, y, width } of wanted) {
        const run = runAt(page?.texts ?? [], text, x, y);
        expect(run, `"${text}" at ${x}, ${y}`).toBeDefined();
        if (run?.text === text) {
          alone += 1;
          expect(run.width).toBeCloseTo(width, 0);
        }
      }
      expect(alone / wanted.length).toBeGreaterThan(0.7);
    }
    const said = pdf.pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join("");
    for (const name of ["G♭", "C♭", "D♭7", "E♭m7♭5", "F♯dim7", "N.C."])
      expect(said).toContain(name);
  });

  test("of several songs has an outline and links in its contents", async () => {
    const songs = ["Ash", "Beech"].map((name) => toHandOut(`Title: ${name}\n| G | C | D | G |`));
    const pdf = await readPdf(await writePdf(printed(songs), fonts, MADE));
    expect(pdf.title).toBe("Songs");
    expect(pdf.outline.map(({ title }) => title)).toEqual(["Ash", "Beech"]);
    expect(pdf.outline[1]?.parts).toContain("Tablature");
    expect(pdf.pages[0]?.links).toBe(2);
    expect(pdf.pages[0]?.width).toBeCloseTo(595.28, 2);
  });

  test("has the same bytes whenever the same pages are written at the same time", async () => {
    const book = printed([toHandOut(chart)], { layout: "overview" });
    const [one, other] = [await writePdf(book, fonts, MADE), await writePdf(book, fonts, MADE)];
    expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
  });

  test("holds drawing and letters, no pictures", async () => {
    const bytes = await writePdf(printed([toHandOut(chart)]), fonts, MADE);
    const raw = Buffer.from(bytes).toString("latin1");
    expect(raw).toMatch(/^%PDF-1\.7/);
    expect(raw).not.toContain("/Subtype /Image");
    expect(raw).toContain("/FontFile2");
  });

  test("tells how far it is", async () => {
    const book = printed([toHandOut(`Title: Long\n| ${"G | C | ".repeat(60)}D |`)]);
    const told: number[] = [];
    await writePdf(book, fonts, MADE, (done) => told.push(done));
    expect(told).toEqual(book.pages.map((_, index) => index + 1));
  });
});
