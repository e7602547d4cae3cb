import { Note } from "tonal";
import { describe, expect, test } from "vitest";
import {
  hasFlats,
  pitchClassOf,
  plainAccidentals,
  plainNote,
} from "../../../src-shared/harmony/noteName.ts";
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

test("the keys with flats are those of the flat side of the circle of fifths", () => {
  // The circle of fifths as every primer prints it; minor keys by their relative major.
  const majors = ["F", "Bb", "Eb", "Ab", "Db", "Gb"];
  const minors = ["D", "G", "C", "F", "Bb", "Eb"];
  for (const tonic of majors) expect(hasFlats({ tonic, mode: "major" })).toBe(true);
  for (const tonic of minors) expect(hasFlats({ tonic, mode: "minor" })).toBe(true);
  for (const tonic of ["C", "G", "D", "A", "E", "B", "F#"])
    expect(hasFlats({ tonic, mode: "major" })).toBe(false);
  for (const tonic of ["A", "E", "B", "F#", "C#"])
    expect(hasFlats({ tonic, mode: "minor" })).toBe(false);
});
