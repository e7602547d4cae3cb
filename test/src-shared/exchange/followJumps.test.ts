import { strToU8 } from "fflate";
import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";
import { importFile } from "../../../src-shared/exchange/importFile.ts";
import type { FoundSong, Importing } from "../../../src-shared/exchange/importing.ts";
import { jumpScoreTable } from "./jumpScoreTable.ts";
import { backward, scoreBytes, sound, startsEnding, stopsEnding, words } from "./scoreOf.ts";

const onlyTune = (found: Importing): FoundSong => {
  const tune = found.ok ? found.tunes[0] : null;
  if (!tune?.ok) {
    throw new Error(JSON.stringify(tune ?? found));
  }
  return tune;
};

const tuneOfAbc = (body: string): FoundSong =>
  onlyTune(importFile(strToU8(`X:1\nT:Tin Gate\nM:4/4\nL:1/4\nK:C\n${body}\n`)));

/** The chords of the bars as they are played, a letter a bar. */
const orderOf = ({ chart }: FoundSong): string => {
  const { bars, stays } = unfold(readChart(chart).value);
  return bars
    .map(({ start }) => stays.findLast((stay) => stay.start <= start)?.chord?.root ?? "-")
    .join("");
};

describe("a score with jumps", () => {
  for (const { name, measures, abc, order } of jumpScoreTable) {
    test(`is played with its ${name}, in MusicXML and in ABC`, () => {
      const tune = onlyTune(importFile(scoreBytes(measures)));
      expect(orderOf(tune)).toBe(order);
      expect(tune.read.join()).toMatch(/(?:Da capo|Dal segno) after bar \d/);
      expect(tune.left.join()).not.toMatch(/as they stand|goes on to its end/);
      expect(readChart(tune.chart).notes).toEqual([]);
      if (abc !== null) {
        expect(orderOf(tuneOfAbc(abc))).toBe(order);
      }
    });
  }

  test("keeps its own repeats and has what is played again behind them, under a label", () => {
    expect(tuneOfAbc(jumpScoreTable[4]?.abc ?? "").chart).toContain(
      "|: A |[1 B :|[2 C || D |\n| E |\n\n[Da-capo]\n| A | C | D |\n\n[Coda]\n| F |",
    );
  });

  test("goes on behind the jump where neither fine nor coda stops it", () => {
    expect(orderOf(tuneOfAbc('"A"A4|"B"B4!D.C.!||"C"C4|"D"D4:|'))).toBe("ABABCDCD");
  });

  test("follows two jumps one after the other", () => {
    const abc = '"A"A4|"B"B4!D.C.!|S"C"C4|"D"D4|"E"E4!D.S.!|"F"F4|]';
    expect(orderOf(tuneOfAbc(abc))).toBe("ABABCDECDEF");
  });
});

describe("a jump that cannot be followed", () => {
  const leftOf = (found: Importing): string => onlyTune(found).left.join(" ");

  test("leaves the bars as they stand, and says where and why", () => {
    const lost = scoreBytes([{}, { after: sound('dalsegno="x"', "D.S.") }]);
    expect(leftOf(importFile(lost))).toContain("Dal segno in bar 2 has no segno before it");
    expect(orderOf(onlyTune(importFile(lost)))).toBe("AB");
    const within = scoreBytes([
      {},
      { before: startsEnding(1), after: `${words("D.C.")}${stopsEnding(1, true)}` },
      { before: startsEnding(2), after: stopsEnding(2, false) },
    ]);
    expect(leftOf(importFile(within))).toContain("Da capo in bar 2 stands within a repeat");
    expect(orderOf(onlyTune(importFile(within)))).toBe("ABAC");
    const away = scoreBytes([{ after: sound('tocoda="c"', "To Coda") }, {}]);
    expect(leftOf(importFile(away))).toContain("no da capo or dal segno");
  });

  test("to a fine that is not there goes on to its end, and says so", () => {
    const tune = tuneOfAbc('"A"A4|"B"B4!D.C.alfine!|]');
    expect([orderOf(tune), tune.left.join(" ")]).toEqual([
      "ABAB",
      expect.stringContaining("Da capo in bar 2 goes to a fine, and there is none"),
    ]);
  });

  test("gives way to an order of parts, and that is said", () => {
    const text = 'X:1\nT:x\nP:ABA\nM:4/4\nL:1/4\nK:C\nP:A\n"A"A4|\nP:B\n"B"B4!D.C.!|\n';
    const tune = onlyTune(importFile(strToU8(text)));
    expect([orderOf(tune), tune.left.join(" ")]).toEqual([
      "ABA",
      expect.stringContaining("the order of parts is played"),
    ]);
  });

  test("that repeats ask to be made after it too is said to be played once", () => {
    const asked = backward.replace("/></bar", ' after-jump="yes"/></bar');
    const tune = onlyTune(
      importFile(scoreBytes([{ after: asked }, { after: sound('dacapo="yes"', "D.C.") }])),
    );
    expect([orderOf(tune), tune.left.join(" ")]).toEqual([
      "AABAB",
      expect.stringContaining("Bar 1: its repeat is asked for after a jump"),
    ]);
  });
});
