import { Key as TonalKey } from "tonal";
import { describe, expect, test } from "vitest";
import {
  keyAt,
  keyName,
  keyOn,
  readKey,
  signatureOf,
} from "../../../src-shared/harmony/readKey.ts";
import { allKeys } from "../../laws/anyChord.ts";

const wordsOf = (text: string) => {
  const reading = readKey(text);
  return reading.ok ? `read as ${keyName(reading.key)}` : `${reading.says} ${reading.try}`;
};

describe("a key", () => {
  test("is read from its name as a chart writes it, whichever key", () => {
    for (const key of allKeys) expect(readKey(keyName(key))).toEqual({ ok: true, key });
  });

  test("is read in words and in printed accidentals", () => {
    const typed = ["A minor", "G major", "F# min", "Bbmaj", "E-", "B♭", " D ", "C Minor", "GM"];
    expect(typed.map(wordsOf)).toEqual(
      ["Am", "G", "F#m", "Bb", "Em", "Bb", "D", "Cm", "G"].map((name) => `read as ${name}`),
    );
  });

  test("has the signature that tonal gives it", () => {
    expect(signatureOf({ tonic: "Eb", mode: "major" })).toBe(-3);
    expect(signatureOf({ tonic: "C#", mode: "minor" })).toBe(4);
    const sharpest = allKeys.filter((key) => Math.abs(signatureOf(key)) > 7);
    expect(sharpest).toEqual([]);
  });

  test("that nobody writes is refused with its usual name", () => {
    expect(wordsOf("G#")).toBe("G# would have more than seven sharps or flats. Write Key: Ab.");
    expect(wordsOf("Dbm")).toBe("Dbm would have more than seven sharps or flats. Write Key: C#m.");
  });

  test("in another mode, a small letter or German is refused with what to write", () => {
    expect(wordsOf("D dorian")).toBe(
      '"D dorian" is not a key. Write the tonic, with m for minor, as in Key: G or Key: F#m.',
    );
    expect(wordsOf("am")).toBe("A key is written with a capital letter. Write Key: Am.");
    expect(wordsOf("H")).toBe("H is B in English note names. Write Key: B.");
    expect(wordsOf("")).toContain("is not a key.");
  });
});

describe("the usual key at each pitch class", () => {
  test("has at most six sharps or flats", () => {
    for (const mode of ["major", "minor"] as const) {
      for (let pitchClass = 0; pitchClass < 12; pitchClass += 1) {
        const { tonic } = keyAt(pitchClass, mode);
        const published = mode === "major" ? TonalKey.majorKey(tonic) : TonalKey.minorKey(tonic);
        expect(Math.abs(published.alteration)).toBeLessThanOrEqual(6);
      }
    }
  });

  test("takes over where a mode would need too many", () => {
    expect(keyOn("Gb", "minor")).toEqual({ tonic: "F#", mode: "minor" });
    expect(keyOn("Gb", "major")).toEqual({ tonic: "Gb", mode: "major" });
  });
});
