import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { writeChart } from "../../../src-shared/chart/writeChart.ts";

describe("a written chart", () => {
  test("is canonical: one field a line, four bars a line, repeat starts and beats shown", () => {
    const typed = `key:Bb tempo: 1/2=90 Time:2/2 capo: 2
[A] Bb...|Eb'F.., :|
[B]F7|....|%|Bb .. F|1 5-7 |1 4min
form: A A B`;
    const reading = readChart(typed);
    expect(reading.notes).toEqual([]);
    expect(writeChart(reading.value)).toBe(`Title: Untitled
Key: Bb
Time: 2/2
Tempo: 90
Capo: 2
Form: A A B

[A]
|: Bb | Eb' F . . , :|

[B]
| F7 | F7 | F7 | Bb . . F |
| 1 5-7 | 1 4m |
`);
  });

  test("counts 6/8 in eighths", () => {
    const reading = readChart("Time: 6/8  Tempo: 1/4=162\nG . . C . . | G .... D | %");
    expect(reading.notes).toEqual([]);
    expect(writeChart(reading.value)).toBe(
      "Title: Untitled\nKey: G\nTime: 6/8\nTempo: 108\n\n| G C | G . . . . D | G . . . . D |\n",
    );
  });

  test("shows endings, double bars and repeats as they were meant", () => {
    const song = readChart("G || C | D |[1 G :|[2,3 Em ::|4 C || D ::|").value;
    expect(writeChart(song)).toContain("| G |: C | D |[1 G :|\n|[2,3 Em ::|");
  });

  test("says nothing of a capo or tuning that is as usual", () => {
    expect(writeChart(readChart("| G . . D |").value)).toBe(
      "Title: Untitled\nKey: G\nTime: 4/4\nTempo: 100\n\n| G . . D |\n",
    );
  });

  test("of an empty song reads as one", () => {
    const { value } = readChart("Title: Nothing Yet\nKey: Em");
    expect(writeChart(value)).toBe("Title: Nothing Yet\nKey: Em\nTime: 4/4\nTempo: 100\n");
    expect(readChart(writeChart(value))).toMatchObject({ value, notes: [] });
  });

  test("tidies a title that no chart can hold", () => {
    const song = { ...readChart("G").value, title: "Two\nlines Key: D # and more" };
    expect(readChart(writeChart(song))).toMatchObject({
      value: { title: "Two lines Key D and more", key: { tonic: "G" } },
      notes: [],
    });
  });
});
