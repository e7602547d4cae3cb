import { expect, test } from "vitest";
import { makeChord } from "../../../src-shared/harmony/makeChord.ts";
import { spelledIn } from "../../../src-shared/harmony/spelledIn.ts";

// Spellings of chord tones: Chord.get of tonal, read off by hand; double accidentals as they sound.
test.each([
  ["Bb", "", [10, 2, 5], "Bb D F"],
  ["A", "", [9, 1, 4], "A C# E"],
  ["C", "m", [0, 3, 7], "C Eb G"],
  ["F#", "m", [6, 9, 1], "F# A C#"],
  ["Eb", "7", [3, 7, 10, 1], "Eb G Bb Db"],
  ["B", "dim7", [11, 2, 5, 8], "B D F Ab"],
  ["Ab", "m", [8, 11, 3], "Ab B Eb"],
] as const)(
  "the tones of %s%s are named as its letters are, whatever the key",
  (root, quality, tones, names) => {
    const chord = makeChord(root, quality);
    for (const flats of [true, false]) {
      expect(tones.map((tone) => spelledIn(chord, tone, flats)).join(" ")).toBe(names);
    }
    expect(spelledIn(makeChord("G", ""), 6, false)).toBe("F#");
    expect(spelledIn(makeChord("G", ""), 6, true)).toBe("Gb");
  },
);
