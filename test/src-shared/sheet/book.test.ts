import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { writeChart } from "../../../src-shared/chart/writeChart.ts";
import { chordName } from "../../../src-shared/harmony/chord.ts";
import { engraved } from "../../../src-shared/sheet/engraved.ts";
import { handOutLayouts } from "../../../src-shared/sheet/handOut.ts";
import type { Book } from "../../../src-shared/sheet/page.ts";
import { MARGIN, type PaperName } from "../../../src-shared/sheet/paper.ts";
import { anySong } from "../../laws/anyChart.ts";
import { barsNamed, boxOf, isText, printed, toHandOut } from "./printing.ts";

const anyPaper = fc.constantFrom<PaperName>("a4", "letter");
const anyNotes = fc.oneof(
  fc.constant(""),
  fc.lorem({ maxCount: 300 }),
  fc.string({ unit: "binary", maxLength: 200 }),
);

/** What floating point and rounding to a thousandth add. */
const SPARE = 0.01;

const outside = ({ pages, width, height }: Book): readonly string[] =>
  pages.flatMap(({ marks }, page) =>
    marks.flatMap((mark) => {
      const { left, right, top, bottom } = boxOf(mark);
      const inside =
        left >= MARGIN - 1 - SPARE &&
        right <= width - MARGIN + 1 + SPARE &&
        top >= MARGIN - 1 - SPARE &&
        bottom <= height - MARGIN + 1 + SPARE;
      return inside ? [] : [`page ${page + 1}: ${JSON.stringify(mark)}`];
    }),
  );

const textOf = ({ pages }: Book): string =>
  pages.flatMap(({ marks }) => marks.filter(isText).map(({ text }) => text)).join("");

describe("every hand-out", () => {
  test("keeps inside its margins, whatever the song, the paper, the layout and the notes", () => {
    fc.assert(
      fc.property(
        anySong,
        anyPaper,
        fc.constantFrom(...handOutLayouts),
        anyNotes,
        (song, paper, layout, notes) => {
          const book = printed([toHandOut(writeChart(song), notes)], { paper, layout });
          expect(book.pages.length).toBeGreaterThan(0);
          expect(outside(book)).toEqual([]);
        },
      ),
      { numRuns: 25 },
    );
  });

  test("has every bar in one whole system, every system whole on one page, and every chord's name", () => {
    fc.assert(
      fc.property(anySong, anyPaper, (song, paper) => {
        const own = toHandOut(writeChart(song));
        const book = printed([own], { paper, without: ["shapes", "trouble", "changes"] });
        const systems = book.pages.flatMap(({ regions }) =>
          regions.filter(({ kind }) => kind === "system"),
        );
        const bars = systems.flatMap(({ name }) => {
          const [first, last] = barsNamed(name) ?? [0, -1];
          return Array.from({ length: last - first + 1 }, (_, index) => first + index);
        });
        expect(bars).toEqual(own.walk.timeline.bars.map(({ index }) => index + 1));
        for (const { regions } of book.pages) {
          for (const [index, { top, bottom }] of regions.entries()) {
            expect(bottom).toBeLessThanOrEqual(book.height - MARGIN);
            expect(top).toBeGreaterThanOrEqual((regions[index - 1]?.bottom ?? 0) - SPARE);
          }
          expect(regions.at(-1)?.kind === "head" && book.pages.length > 1).toBe(false);
        }
        const said = textOf(book);
        for (const { chord } of own.walk.timeline.stays) {
          expect(said).toContain(chord === null ? "N.C." : engraved(chordName(chord)));
        }
      }),
      { numRuns: 25 },
    );
  });

  test("comes out the same each time", () => {
    fc.assert(
      fc.property(anySong, (song) => {
        const own = toHandOut(writeChart(song), "Twice.");
        expect(printed([own])).toEqual(printed([own]));
      }),
      { numRuns: 5 },
    );
  });
});

const barsOf = (count: number): string =>
  Array.from({ length: count }, (_, index) => ["G", "C", "Em", "D7"][(index * 7) % 4]).join(" | ");

describe("a long song", () => {
  test("of 500 bars fills its pages of systems to the foot and leaves no system alone", () => {
    const own = toHandOut(`Title: Far Field\nKey: G\n[A]\n| ${barsOf(500)} |`);
    const { pages, height } = printed([own], { without: ["changes"] });
    const systems = pages.map(({ regions }) => regions.filter(({ kind }) => kind === "system"));
    const full = systems.filter((each) => each.length > 0);
    expect(full.flat().length).toBe(125);
    for (const page of full.slice(1, -1)) {
      expect(page.at(-1)?.bottom ?? 0).toBeGreaterThan(height - MARGIN - 40);
    }
    expect(full.at(-1)?.length).toBeGreaterThan(1);
  });

  test("of 64 bars with a section that comes again is an overview on one page", () => {
    const own = toHandOut(
      `Title: Near Field\nKey: G\nForm: A B A B\n[A]\n| ${barsOf(16)} |\n[B]\n| ${barsOf(15)} | C |`,
      "Listen for the bass.",
    );
    expect(own.walk.timeline.bars.length).toBe(64);
    const book = printed([own], { layout: "overview" });
    expect(book.pages.length).toBe(1);
    expect(textOf(book)).toContain("as bars 1 to 16");
  });
});

describe("a hand-out of several songs", () => {
  const songs = ["Alder", "Birch", "Cedar"].map((name) =>
    toHandOut(`Title: ${name}\nKey: D\n| ${barsOf(24)} |`),
  );
  const book = printed(songs);

  test("begins with a list of contents whose lines lead to the songs", () => {
    const [contents] = book.pages;
    const titled = (page: number): boolean =>
      book.pages[page]?.regions[0]?.name === book.outline.find((each) => each.page === page)?.title;
    expect(contents?.links.map(({ page }) => page)).toEqual(book.outline.map(({ page }) => page));
    expect(contents?.links.every(({ page }) => titled(page))).toBe(true);
    expect(book.outline.map(({ title }) => title)).toEqual(["Alder", "Birch", "Cedar"]);
    const said = contents?.marks.filter(isText).map(({ text }) => text) ?? [];
    for (const { page } of book.outline) expect(said).toContain(`${page + 1}`);
  });

  test("names the parts of each song in its outline", () => {
    expect(book.outline[0]?.parts.map(({ title }) => title)).toEqual([
      "Shapes",
      "The hardest changes",
      "Tablature",
      "All changes",
    ]);
  });
});

describe("a song that cannot be planned", () => {
  test("says so on its page, and has no tablature to read", () => {
    const own = toHandOut("Title: Nowhere\nKey: G\nTuning: double C\n| N.C. |");
    expect(printed([{ ...own, walk: { ...own.walk, route: null } }]).pages.length).toBe(1);
    const said = textOf(printed([{ ...own, walk: { ...own.walk, route: null } }]));
    expect(said).toContain("No route was found");
  });
});
