import { strToU8 } from "fflate";
import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";
import { importFile } from "../../../src-shared/exchange/importFile.ts";
import type { FoundTune } from "../../../src-shared/exchange/importing.ts";

const tunesOf = (body: string, header = "M:4/4\n"): readonly FoundTune[] => {
  const found = importFile(strToU8(`X:1\nT:Lock Cut\n${header}L:1/8\nQ:1/4=120\nK:G\n${body}\n`));
  return found.ok ? found.tunes : [];
};

const saysOf = (tunes: readonly FoundTune[]): string =>
  tunes.map((tune) => (tune.ok ? tune.left.join(" ") : `${tune.says} ${tune.try}`)).join("\n");

const chartsOf = (tunes: readonly FoundTune[]): readonly string[] =>
  tunes.flatMap((tune) => (tune.ok ? [tune.chart] : []));

/** Each change with its eighth from the start, as played. */
const changesOf = (chart: string): readonly string[] =>
  unfold(readChart(chart).value).stays.map(({ start, chord }) => `${start / 240} ${chord?.name}`);

describe("a tune whose metre changes", () => {
  test("is written in a metre of which all its bars are whole ones, every change in its place", () => {
    const tunes = tunesOf('|:"G"G8|"C"c8|[M:2/4]"D"d4|[M:4/4]"G"G4"Em"E4:|');
    expect(saysOf(tunes)).toContain("in 4/4 and 2/4: it is written in 2/4 throughout");
    const [chart = ""] = chartsOf(tunes);
    expect(chart).toContain("Time: 2/4");
    const once = ["0 G", "8 C", "16 D", "20 G", "24 Em"];
    const again = once.map((each) => each.replace(/^\d+/, (at) => `${Number(at) + 28}`));
    expect(changesOf(chart)).toEqual([...once, ...again]);
  });

  test("keeps a pick-up whole in that: what completes it comes with the next bar", () => {
    const tunes = tunesOf('G2|"G"G8|[M:2/4]"D"d4|[M:4/4]"C"c6:|');
    expect(changesOf(chartsOf(tunes)[0] ?? "").slice(0, 4)).toEqual(["0 G", "8 D", "12 C", "20 G"]);
  });

  test("is a song for each stretch of at least four bars, with the chord that sounds on", () => {
    const tunes = tunesOf('"G"G8|"C"c8|"D"d8|"G"G8|[M:6/8]G6|"C"c6|"D"d6|"G"G6|"Am"A6|]');
    expect(tunes.map(({ title }) => title)).toEqual([
      "Lock Cut (bars 1 to 4, 4/4)",
      "Lock Cut (bars 5 to 9, 6/8)",
    ]);
    expect(saysOf(tunes)).toContain(
      "The metre changes to 6/8 in bar 5: each part is a song of its own.",
    );
    const [, jig = ""] = chartsOf(tunes);
    expect(jig).toContain("Time: 6/8\nTempo: 80\n\n| G | C | D | G |\n| Am |");
  });

  test.each([
    ["a stretch too short for a song", '"G"G8|"C"c8|[M:6/8]"D"d6|[M:4/4]"G"G8|', "in bar 3"],
    [
      "a repeat over the change",
      '|:"G"G8|"C"c8|"D"d8|"G"G8|[M:6/8]"G"G6|"C"c6|"D"d6|"G"G6:|',
      "a repeat goes over it",
    ],
    [
      "a da capo over the change",
      '"G"G8|"C"c8|"D"d8|"G"G8|[M:6/8]"G"G6|"C"c6|"D"d6|"G"G6!D.C.!|]',
      "a da capo or dal segno goes over it",
    ],
    [
      "a metre without patterns",
      '"G"G8|"C"c8|"D"d8|"G"G8|[M:7/8]"G"G7|"C"c7|"D"d7|"G"G7|',
      "no right-hand patterns for 7/8",
    ],
  ])("is refused where there is %s, and it says where", (_, body, says) => {
    const tunes = tunesOf(body);
    expect(tunes.map(({ ok }) => ok)).toEqual([false]);
    expect(saysOf(tunes)).toMatch(/^The metre changes to \S+ in bar \d/);
    expect(saysOf(tunes)).toContain(says);
  });

  test("that only is called by another name keeps the first, and that is said", () => {
    const tunes = tunesOf('"G"G8|[M:2/2]"C"c8|');
    expect(saysOf(tunes)).toContain("From bar 2 the metre is 2/2: 4/4 is kept.");
    expect(chartsOf(tunes)[0]).toContain("Time: 4/4\nTempo: 120\n\n| G | C |");
  });
});

test("a tune in 12/8 is written in 6/8, two bars for one", () => {
  const tunes = tunesOf('"G"G6"C"c6|"D"d12|', "M:12/8\n");
  expect(chartsOf(tunes)[0]).toContain("Time: 6/8\nTempo: 80\n\n| G | C | D | D |");
  expect(saysOf(tunes)).toContain("in 12/8: it is written in 6/8 throughout");
});
