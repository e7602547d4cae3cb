import { Note } from "tonal";
import { describe, expect, test } from "vitest";
import { tuningNamed, tunings } from "../../../src-shared/neck/tuningTable.ts";

// Names and notes, strings 5 to 1, as printed at bmfolk.co.uk (open G, C, double C, G modal, open D);
// G minor from memory. tonal turns the names into MIDI numbers.
const printed = new Map([
  ["open G", "G4 D3 G3 B3 D4"],
  ["C", "G4 C3 G3 B3 D4"],
  ["double C", "G4 C3 G3 C4 D4"],
  ["open D", "F#4 D3 F#3 A3 D4"],
  ["G modal", "G4 D3 G3 C4 D4"],
  ["G minor", "G4 D3 G3 Bb3 D4"],
]);

describe("the tuning table", () => {
  test("has each tuning's open strings at the pitches that its note names have", () => {
    for (const tuning of tunings) {
      const names = printed.get(tuning.name)?.split(" ").toReversed();
      expect(names?.map((name) => Note.midi(name))).toEqual(tuning.open);
    }
  });

  test("names every tuning once and starts with open G", () => {
    const names = tunings.map((tuning) => tuning.name);
    expect(new Set(names).size).toBe(names.length);
    expect(names[0]).toBe("open G");
  });

  test("finds a tuning whatever its letters' case, and none for an unknown name", () => {
    expect(tuningNamed("  DOUBLE  c ")?.name).toBe("double C");
    expect(tuningNamed("open Q")).toBeNull();
  });
});
