import { describe, expect, test } from "vitest";
import { MAX_BARS } from "../../../src-shared/chart/playOrder.ts";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";

const played = (text: string) => {
  const { value, notes } = readChart(text);
  expect(notes).toEqual([]);
  return unfold(value)
    .bars.map((bar) => bar.written)
    .join(" ");
};
const stays = (text: string) =>
  unfold(readChart(text).value).stays.map(
    (stay) => `${stay.chord?.name ?? "N.C."} ${stay.start}+${stay.length} in ${stay.bar}`,
  );

describe("bar lines as in ABC 2.1 §4.8", () => {
  test("are plain, double or final without any effect on the order", () => {
    for (const text of ["G | C | D", "G || C |] D", "[| G | C | D |]", "G | C [|] D"]) {
      expect(played(text)).toBe("0 1 2");
    }
  });

  test("repeat from |: to :|", () => {
    expect(played("|: G | C :| D")).toBe("0 1 0 1 2");
    expect(played("G |: C | D :|")).toBe("0 1 2 1 2");
  });

  test("end one repeat and start the next at ::, :|: and :||:", () => {
    for (const both of ["::", ":|:", ":||:", ":| |:", ":|\n|:"]) {
      expect(played(`|: G ${both} C :| D`)).toBe("0 0 1 1 2");
    }
  });

  test("play three times from |:: to ::|", () => {
    expect(played("|:: G | C ::| D")).toBe("0 1 0 1 0 1 2");
    expect(played("|: G ::| C")).toBe("0 0 0 1");
    expect(played("|:: G :| C")).toBe("0 0 0 1");
  });

  test("go back to the chart's start where a repeat has none", () => {
    expect(played("G | C :| D")).toBe("0 1 0 1 2");
  });

  test("go back to the last double bar or repeat end where a repeat has no start", () => {
    expect(played("G || C | D :|")).toBe("0 1 2 1 2");
    expect(played("G |] C | D :|")).toBe("0 1 2 1 2");
    expect(played("|: G :| C | D :|")).toBe("0 0 1 2 1 2");
  });

  test("go back no further than the section's start", () => {
    expect(played("[A] G | C\n[B] D | Em :|")).toBe("0 1 2 3 2 3");
  });
});

describe("endings as in ABC 2.1 §4.9 and §4.10", () => {
  test("take turns", () => {
    for (const text of [
      "|: G | C |1 D :|2 G |]",
      "|: G | C |[1 D :|[2 G ||",
      "|: G | C | [1 D :| [2 G |]",
      "G | C |1 D :|2 G",
    ]) {
      expect(played(text)).toBe("0 1 2 0 1 3");
    }
  });

  test("are played on each of their times", () => {
    expect(played("|: G |[1,3 C :|[2,4 D :|")).toBe("0 1 0 2 0 1 0 2");
    expect(played("|: G |[1-3 C :|[4 D |] Em")).toBe("0 1 0 1 0 1 0 2 3");
    expect(played("|: G |1,2 C ::|3 D |] Em")).toBe("0 1 0 1 0 2 3");
  });

  test("last to the next repeat end, double bar or repeat start", () => {
    expect(played("|: G |1 C | D :|2 Em | Am || G")).toBe("0 1 2 0 3 4 5");
    expect(played("|: G |1 C :|2 Em |: Am :|")).toBe("0 1 0 2 3 3");
    expect(played("|: G |1 C :|2 Em | Am")).toBe("0 1 0 2 3");
  });

  test("may follow one repeat after another", () => {
    expect(played("|: G |1 C :|2 D || Em |1 Am :|2 B |]")).toBe("0 1 0 2 3 4 3 5");
  });
});

describe("a form", () => {
  test("plays its sections in order, each with its repeats", () => {
    expect(played("Form: A B A\n[A] |: G :| C\n[B] D")).toBe("0 0 1 2 0 0 1");
  });

  test("marks each section's first bar, each time", () => {
    const { bars } = unfold(readChart("Form: A B B\n[A] G | C\n[B] D").value);
    expect(bars.map((bar) => [bar.section, bar.startsSection])).toEqual([
      ["A", true],
      ["A", false],
      ["B", true],
      ["B", true],
    ]);
  });
});

describe("the song as played", () => {
  test("counts 480 ticks to a quarter", () => {
    const { bars, length } = unfold(readChart("Time: 3/4\nG | C").value);
    expect(bars.map((bar) => [bar.index, bar.start, bar.length])).toEqual([
      [0, 0, 1440],
      [1, 1440, 1440],
    ]);
    expect(length).toBe(2880);
    expect(unfold(readChart("Time: 2/2\nG").value).length).toBe(1920);
  });

  test("joins neighbours with one chord, over bar lines, repeats and sections", () => {
    expect(stays("[A] |: G | G C :|\n[B] C | . D ..")).toEqual([
      "G 0+2880 in 0",
      "C 2880+960 in 1",
      "G 3840+2880 in 2",
      "C 6720+3360 in 3",
      "D 10080+1440 in 5",
    ]);
  });

  test("joins a degree and a letter that sound the same, but not a chord over another bass", () => {
    expect(stays("Key: D\n1 | D | D/F#")).toEqual(["D 0+3840 in 0", "D/F# 3840+1920 in 2"]);
  });

  test("joins silence to silence only", () => {
    expect(stays("N.C. | NC G | G N.C.")).toEqual([
      "N.C. 0+2880 in 0",
      "G 2880+1920 in 1",
      "N.C. 4800+960 in 2",
    ]);
  });

  test("is cut at its longest, with a word where", () => {
    const text = `[A] ${"G | C | ".repeat(1500)} D ${":".repeat(9)}|`;
    const { value, notes } = readChart(text);
    expect(unfold(value).bars.length).toBe(MAX_BARS);
    expect(notes.map((note) => [note.code, note.says])).toEqual([
      ["too-long", "The song is cut here, after 20000 bars."],
    ]);
  });

  test("is nothing where the song is empty", () => {
    expect(unfold(readChart("").value)).toEqual({
      meter: { beats: 4, unit: 4 },
      bars: [],
      stays: [],
      length: 0,
    });
  });
});
