import { describe, expect, test } from "vitest";
import { makeChord } from "../../../src-shared/harmony/makeChord.ts";

describe("a chord made from its parts", () => {
  test("names its bass behind a slash", () => {
    expect(makeChord("D", "m7", "A")).toMatchObject({ name: "Dm7/A", bass: "A" });
  });

  test("is no slash chord over its own root, however that is spelled", () => {
    expect(makeChord("Bb", "", "A#")).toMatchObject({ name: "Bb", bass: null });
  });

  test("has the pitch classes of its tones", () => {
    expect(makeChord("Bb", "7").tones.map((tone) => tone.pitchClass)).toEqual([10, 2, 5, 8]);
  });

  test("needs a note name for its root", () => {
    expect(() => makeChord("H", "7")).toThrow('"H" is not a note name');
  });
});
