import { describe, expect, test } from "vitest";
import { handOutPdf } from "../../../src-main/command/handOutPdf.ts";
import { readSheetRequest, sheetBytes } from "../../../src-main/command/sheetCommand.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { usualHandOut } from "../../../src-shared/sheet/handOut.ts";
import { readPdf } from "../../src-shared/sheet/readPdf.ts";

const refused = (args: readonly string[]): string => {
  const request = readSheetRequest(args);
  return request.ok ? "" : request.says;
};

describe("the sheet command", () => {
  test("takes its own options among those of plan, in any order and either spelling", () => {
    const ways = [
      ["song.txt", "--out", "musicxml", "--key", "Bb", "--to", "a b.xml", "--notation"],
      ["--to=a b.xml", "--key", "Bb", "--notation", "--out=musicxml", "song.txt"],
    ];
    for (const args of ways) {
      const request = readSheetRequest(args);
      expect(request).toMatchObject({
        ok: true,
        format: "musicxml",
        to: "a b.xml",
        notation: true,
        plan: { file: "song.txt", settings: { playKey: "Bb" } },
      });
    }
  });

  test("reads standard input and writes standard output where it is told nothing else", () => {
    expect(readSheetRequest(["-", "--out", "mid"])).toMatchObject({
      ok: true,
      to: null,
      plan: { file: "-" },
    });
  });

  test("says in words what is wrong with each wrong use", () => {
    expect(refused([])).toContain("--out takes one of pdf, musicxml, mid, txt; none is given");
    expect(refused(["a.txt", "--out", "mid", "--paper", "a4"])).toContain("belongs to --out pdf");
    expect(refused(["a.txt", "--out", "pdf", "--paper", "a5"])).toContain('"a5" is none');
    expect(refused(["a.txt", "--out", "pdf", "--layout", "huge"])).toContain('"huge" is none');
    expect(refused(["--out", "pdf"])).toContain("sheet takes one chart file or more");
    expect(refused(["a.txt", "b.txt", "--out", "mid"])).toContain("sheet takes one chart file");
    expect(refused(["a.txt", "--out", "doc"])).toContain('"doc" is none of them');
    expect(refused(["--out", "mid"])).toContain("sheet takes one chart file");
    expect(refused(["a.txt", "--out", "mid", "--to"])).toContain("--to takes the path");
    expect(refused(["a.txt", "--out", "mid", "--notation"])).toContain("--out musicxml");
    expect(refused(["a.txt", "--out", "mid", "--key", "Q"])).toContain('"Q" is not one');
    expect(refused(["a.txt", "--out", "mid", "--alternatives", "2"])).toContain("one route");
    expect(refused(["a.txt", "--out", "mid", "--colour"])).toContain("--colour");
  });

  test("takes several files for one PDF, with its paper and its layout", () => {
    const asked = [
      "a.txt",
      "--out",
      "pdf",
      "b.txt",
      "--paper=letter",
      "--layout",
      "overview",
      "--loop",
    ];
    expect(readSheetRequest(asked)).toMatchObject({
      ok: true,
      format: "pdf",
      handOut: { paper: "letter", layout: "overview", without: [] },
      plan: { file: "a.txt", more: ["b.txt"], settings: { goesRound: true } },
    });
    expect(readSheetRequest(["a.txt", "--out", "pdf"])).toMatchObject({
      handOut: { paper: "a4", layout: "full" },
      plan: { more: [] },
    });
  });

  test("writes songs as one PDF and says which signs its fonts lack", async () => {
    const walks = ["Ash 夜", "Beech"].map((title) =>
      chartToScore(`Title: ${title}\n| G | C | D | G |`, wholeNeckPlan, null),
    );
    const cautions: string[] = [];
    const bytes = await handOutPdf(walks, usualHandOut("letter"), (says) => cautions.push(says));
    const pdf = await readPdf(bytes);
    expect(pdf.outline.map(({ title }) => title)).toEqual(["Ash 夜", "Beech"]);
    expect(pdf.pages[0]?.width).toBe(612);
    expect(cautions).toEqual(["The printed fonts lack 夜; a question mark stands there."]);
  });

  test("gives each format its own bytes", () => {
    const walk = chartToScore("Title: Ash Lane\n| G | C |", wholeNeckPlan, null);
    const text = (format: "musicxml" | "mid" | "txt") =>
      Buffer.from(sheetBytes(walk, format, false)).toString("latin1");
    expect(text("mid")).toMatch(/^MThd/);
    expect(text("musicxml")).toMatch(/^<\?xml/);
    expect(text("txt")).toMatch(/^Ash Lane\n/);
    expect(text("txt")).toContain("shape");
  });
});
