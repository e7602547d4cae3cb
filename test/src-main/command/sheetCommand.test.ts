import { describe, expect, test } from "vitest";
import { readSheetRequest, sheetBytes } from "../../../src-main/command/sheetCommand.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";

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
    expect(refused([])).toContain("--out takes one of musicxml, mid, txt; none is given");
    expect(refused(["a.txt", "--out", "doc"])).toContain('"doc" is none of them');
    expect(refused(["--out", "mid"])).toContain("sheet takes one chart file");
    expect(refused(["a.txt", "--out", "mid", "--to"])).toContain("--to takes the path");
    expect(refused(["a.txt", "--out", "mid", "--notation"])).toContain("--out musicxml");
    expect(refused(["a.txt", "--out", "mid", "--key", "Q"])).toContain('"Q" is not one');
    expect(refused(["a.txt", "--out", "mid", "--alternatives", "2"])).toContain("one route");
    expect(refused(["a.txt", "--out", "mid", "--colour"])).toContain("--colour");
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
