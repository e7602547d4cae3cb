import fc from "fast-check";
import { Note, Scale } from "tonal";
import { describe, expect, test } from "vitest";
import {
  chordOnDegree,
  degreeChordOf,
  degreeSymbol,
  noteOnDegree,
} from "../../../src-shared/harmony/degree.ts";
import { readDegree } from "../../../src-shared/harmony/readDegree.ts";
import { allKeys, anyChord, anyDegreeChord, anyKey } from "../../laws/anyChord.ts";

const nameIn = (symbol: string, tonic: string, mode: "major" | "minor" = "major") => {
  const reading = readDegree(symbol);
  return reading.ok ? chordOnDegree(reading.chord, { tonic, mode }).name : reading.says;
};

describe("a degree", () => {
  test("is in every key the note of tonal's major scale on the tonic", () => {
    for (const key of allKeys) {
      const degrees = [1, 2, 3, 4, 5, 6, 7].map((number) =>
        noteOnDegree({ number, accidental: "" }, key),
      );
      expect(degrees).toEqual(Scale.get(`${key.tonic} major`).notes.map(Note.simplify));
    }
  });

  test("is a semitone lower with a flat and higher with a sharp, in every key", () => {
    for (const key of allKeys) {
      for (const number of [1, 2, 3, 4, 5, 6, 7]) {
        const [flat, plain, sharp] = (["b", "", "#"] as const).map((accidental) =>
          Note.chroma(noteOnDegree({ number, accidental }, key)),
        );
        expect(((plain ?? 0) - (flat ?? 0) + 12) % 12).toBe(1);
        expect(((sharp ?? 0) - (plain ?? 0) + 12) % 12).toBe(1);
      }
    }
  });

  test("is spelled as players call it", () => {
    expect(nameIn("b7", "G")).toBe("F");
    expect(nameIn("b3", "D")).toBe("F");
    expect(nameIn("7dim", "F#")).toBe("Fdim");
    expect(nameIn("4", "Gb")).toBe("B");
    expect(nameIn("#4dim7", "Bb")).toBe("Edim7");
    expect(nameIn("b6", "Eb")).toBe("B");
  });

  test("counts along the major scale in minor keys too, and a bare figure is major", () => {
    expect(["1m", "b3", "4m", "5-7", "b6", "b7", "4"].map((s) => nameIn(s, "A", "minor"))).toEqual([
      "Am",
      "C",
      "Dm",
      "E7",
      "F",
      "G",
      "D",
    ]);
  });

  test("carries its bass along", () => {
    expect(nameIn("1/3", "Bb")).toBe("Bb/D");
    expect(nameIn("2m7/5", "A")).toBe("Bm7/E");
  });
});

describe("a chord's degree", () => {
  test("gives the chord's own pitches back, in every key", () => {
    fc.assert(
      fc.property(anyChord, anyKey, (chord, key) => {
        const back = chordOnDegree(degreeChordOf(chord, key), key);
        expect(back.tones).toEqual(chord.tones);
        expect(back.quality).toBe(chord.quality);
        expect(back.bass && Note.chroma(back.bass)).toBe(chord.bass && Note.chroma(chord.bass));
      }),
    );
  });

  test("reads back from its symbol", () => {
    fc.assert(
      fc.property(anyDegreeChord, (chord) => {
        expect(readDegree(degreeSymbol(chord))).toEqual({ ok: true, chord, standsFor: null });
      }),
    );
  });
});
