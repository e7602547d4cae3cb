import { Note, Scale } from "tonal";
import { describe, expect, test } from "vitest";
import { readChord } from "../../../src-shared/harmony/readChord.ts";
import { readKey } from "../../../src-shared/harmony/readKey.ts";
import { scaleOf, scaleUnder } from "../../../src-shared/harmony/scale.ts";
import { allKeys } from "../../laws/anyChord.ts";

const under = (symbol: string, keyText: string): readonly number[] => {
  const chord = readChord(symbol);
  const key = readKey(keyText);
  if (!chord.ok || !key.ok) throw new Error(`${symbol} in ${keyText} cannot be read`);
  return scaleUnder(chord.chord, key.key);
};
/** Pitch classes from C up of a scale by name, straight from tonal. */
const byTonal = (name: string): readonly number[] =>
  Scale.get(name)
    .notes.map((note) => Note.chroma(note))
    .toSorted((a, b) => a - b);

test("every key's scale is the one that tonal gives by name", () => {
  for (const key of allKeys) {
    const name = `${key.tonic} ${key.mode === "major" ? "major" : "minor"}`;
    expect(
      scaleOf(key).toSorted((a, b) => a - b),
      name,
    ).toEqual(byTonal(name));
  }
});

// Each pair by name: common practice, no published source.
describe("the scale under a chord", () => {
  test("is the key's own where the chord lies in it", () => {
    expect(under("D7", "G")).toEqual(byTonal("G major"));
    expect(under("Em", "G")).toEqual(byTonal("G major"));
  });

  test("takes the chord's tone for the scale's note on the same letter, and leaves the others", () => {
    // C# for C makes D major; F for F# makes C major.
    expect(under("A7", "G")).toEqual(byTonal("D major"));
    expect(under("F", "G")).toEqual(byTonal("C major"));
    expect(under("Cm", "G")).toEqual([0, 2, 3, 6, 7, 9, 11]);
    expect(under("E7", "Am")).toEqual(byTonal("A harmonic minor"));
  });
});
