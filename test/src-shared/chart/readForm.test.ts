import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";

describe("a form", () => {
  test("names sections whose labels are written in several words", () => {
    const { value, notes } = readChart(
      "Form: Verse 2 Verse 1, Last Chorus\n[Verse 1] G\n[Verse 2] C\n[Last Chorus] D",
    );
    expect(notes).toEqual([]);
    expect(value.form).toEqual(["Verse-2", "Verse-1", "Last-Chorus"]);
  });

  test("takes the longest label that its words make up", () => {
    const { value } = readChart("Form: A A B A\n[A] G\n[A-B] C\n[B] D");
    expect(value.form).toEqual(["A", "A-B", "A"]);
  });

  test("names each word that no section has, and plays the others", () => {
    const { value, notes } = readChart("Form: A X B\n[A] G\n[B] C");
    expect(value.form).toEqual(["A", "B"]);
    expect(notes.map(({ at, says }) => [at.column, says])).toEqual([
      [9, "There is no section [X]."],
    ]);
  });
});
