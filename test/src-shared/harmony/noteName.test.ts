import { Note } from "tonal";
import { describe, expect, test } from "vitest";
import { pitchClassOf, plainAccidentals, plainNote } from "../../../src-shared/harmony/noteName.ts";
import { allRoots } from "../../laws/anyChord.ts";

describe("every note name", () => {
  test("has tonal's pitch class", () => {
    expect(allRoots.map(pitchClassOf)).toEqual(allRoots.map((root) => Note.chroma(root)));
  });

  test("keeps its pitch and its side when it is made plain", () => {
    for (const root of [...allRoots, "F##", "Bbb", "Ebb"]) {
      const plain = plainNote(root);
      expect(pitchClassOf(plain)).toBe(pitchClassOf(root));
      expect(plain).toMatch(/^([ADG][b#]?|[CF]#?|[BE]b?)$/);
    }
    expect(["Gb", "F#", "Db", "C#"].map(plainNote)).toEqual(["Gb", "F#", "Db", "C#"]);
  });
});

describe("printed accidentals", () => {
  test("become typed ones", () => {
    expect(plainAccidentals("E♭m/G♯")).toBe("Ebm/G#");
  });
});
