import { describe, expect, test } from "vitest";
import { replaceBar, setHeader, transposeChart } from "../../../src-shared/chart/edits.ts";
import { readChart } from "../../../src-shared/chart/readChart.ts";

const text = `# jam of the week
Title: Down Lamp Lane   Key: G  Tempo: 90   # slow

[A]
|  G   Bm |  1 . . 5-7/7 |   # F# follows
|: Gmin7/Bb | N.C. :|  F#  |
`;

describe("setting a header field", () => {
  test("replaces its value and nothing else", () => {
    expect(setHeader(text, "Key", "A")).toBe(text.replace("Key: G", "Key: A"));
    expect(setHeader(text, "Title", "Up the Stairs")).toBe(
      text.replace("Down Lamp Lane", "Up the Stairs"),
    );
    expect(setHeader("key:G\nC", "Key", "Em")).toBe("key: Em\nC");
    expect(setHeader("Key:\nC", "Key", "Em")).toBe("Key: Em\nC");
  });

  test("puts a field that is missing below the header", () => {
    expect(setHeader(text, "Capo", "2")).toBe(text.replace("# slow\n", "# slow\nCapo: 2\n"));
    expect(setHeader("Key: D", "Tempo", "80")).toBe("Key: D\nTempo: 80");
  });

  test("puts it at the top where there is no header, with the text's own line breaks", () => {
    expect(setHeader("G\r\nC", "Key", "C")).toBe("Key: C\r\nG\r\nC");
    expect(setHeader("", "Title", "New")).toBe("Title: New\n");
  });

  test("keeps the value on its line", () => {
    expect(setHeader("Title: a", "Title", "b\nKey: C # d")).toBe("Title: b Key C d");
  });

  test("changes the field that stands where one is given twice", () => {
    expect(setHeader("Key: D\nKey: A\nG", "Key", "C")).toBe("Key: C\nKey: A\nG");
  });
});

describe("transposing a chart", () => {
  test("replaces letters where they stand and keeps degrees, remarks and layout", () => {
    expect(transposeChart(text, { tonic: "A", mode: "major" })).toBe(`# jam of the week
Title: Down Lamp Lane   Key: A  Tempo: 90   # slow

[A]
|  A   C#m |  1 . . 5-7/7 |   # F# follows
|: Am7/C | N.C. :|  G#  |
`);
  });

  test("writes the key where the chart had none", () => {
    expect(transposeChart("G | D7", { tonic: "Bb", mode: "major" })).toBe("Key: Bb\nBb | F7");
  });

  test("leaves a minor chart minor", () => {
    expect(transposeChart("Key: Am\nAm | E7", { tonic: "Db", mode: "major" })).toBe(
      "Key: C#m\nC#m | G#7",
    );
  });

  test("leaves what is not understood alone", () => {
    expect(transposeChart("Key: C\nC | X9 | G9", { tonic: "D", mode: "major" })).toBe(
      "Key: D\nD | X9 | A9",
    );
  });
});

describe("replacing a bar", () => {
  test("puts the new content in its place", () => {
    expect(replaceBar(text, 1, "4 5")).toBe(text.replace("1 . . 5-7/7", "4 5"));
    expect(replaceBar(text, 4, "D . . C")).toBe(text.replace(":|  F#", ":|  D . . C"));
  });

  test("leaves a silent bar where the content is empty", () => {
    expect(replaceBar("G | C", 0, "  ")).toBe("N.C. | C");
  });

  test("of a chart that has fewer bars is refused", () => {
    expect(() => replaceBar(text, 5, "G")).toThrow("no bar 5 in a chart of 5");
    expect(readChart(text).bars.length).toBe(5);
  });
});
