import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";

const bars = (text: string) => readChart(text).value.sections.flatMap((section) => section.bars);
const symbols = (text: string) =>
  bars(text).map((bar) => bar.stays.map((stay) => stay.symbol).join(" "));
const endings = (text: string) => bars(text).map((bar) => bar.ending?.join(",") ?? "");
const order = (text: string) => unfold(readChart(text).value).bars.map((bar) => bar.written);

describe("a figure behind a bar line", () => {
  test("is a degree where no second ending follows", () => {
    expect(symbols("|1 4 5 1|")).toEqual(["1 4 5 1"]);
    expect(symbols("|1|4|5|1|")).toEqual(["1", "4", "5", "1"]);
    expect(symbols("|:1|4 5:|2|5|")).toEqual(["1", "4 5", "2", "5"]);
    expect(endings("|1 4 5 1|")).toEqual([""]);
  });

  test("is an ending where it touches the bar line and the section has an attached second", () => {
    const text = "|: 1 | 4 |1 5 :|2 1 |]";
    expect(symbols(text)).toEqual(["1", "4", "5", "1"]);
    expect(endings(text)).toEqual(["", "", "1", "2"]);
    expect(order(text)).toEqual([0, 1, 2, 0, 1, 3]);
    expect(readChart(text).notes).toEqual([]);
  });

  test("is an ending before a bracketed second, too", () => {
    expect(endings("|: G |1 C :|[2 D |]")).toEqual(["", "1", "2"]);
  });

  test("is a degree behind white space, whatever follows", () => {
    const text = "|: G | 1 | 5 :|2 C | D";
    expect(symbols(text)).toEqual(["G", "1", "5", "2 C", "D"]);
    expect(endings(text)).toEqual(["", "", "", "", ""]);
  });

  test("is a degree where the second ending is in another section", () => {
    expect(endings("[A] G |1 C\n[B] |: D |1 G :|2 C |]")).toEqual(["", "", "", "1", "2"]);
  });

  test("is a degree with its quality or bass", () => {
    expect(symbols("|1m |1/3 |2m7 :|2m |")).toEqual(["1m", "1/3", "2m7", "2m"]);
  });
});

describe("an ending in brackets", () => {
  test("is an ending whatever follows, and degrees may follow it", () => {
    const text = "|: 1 |[1 4 5 :|[2 5-7 1 |]";
    expect(endings(text)).toEqual(["", "1", "2"]);
    expect(symbols(text)).toEqual(["1", "4 5", "5-7 1"]);
  });

  test("may be closed, and stand at a line's start", () => {
    expect(endings("|: G |\n[1] C :|\n[2] D |]")).toEqual(["", "1", "2"]);
  });

  // ABC notation 2.1 §4.10: [1,3  [1-3  [1,3,5-7, without spaces.
  test("has several numbers as in ABC 2.1 §4.10", () => {
    expect(endings("|: G |[1,3 C :|[2 D |]")).toEqual(["", "1,3", "2"]);
    expect(endings("|: G |[1-3 C :|[4 D |]")).toEqual(["", "1,2,3", "4"]);
    expect(endings("|: G |[1,3,5-7 C :|[2,4 D |]")).toEqual(["", "1,3,5,6,7", "2,4"]);
  });
});
