import { Note } from "tonal";
import { describe, expect, test } from "vitest";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { pitchAt } from "../../../src-shared/neck/pitchAt.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { fret } from "../../../src-shared/units.ts";

const openNeck = neckFor(tunings[0], fret(0));
const capoed = neckFor(tunings[0], fret(2));

describe("the pitch at a place", () => {
  test("rises a semitone a fret on every long string, as tonal transposes", () => {
    const openNames = ["D4", "B3", "G3", "D3"];
    for (const [index, name] of openNames.entries()) {
      for (let n = 0; n <= 22; n += 1) {
        const string = (index + 1) as 1 | 2 | 3 | 4;
        const expected = (Note.midi(name) ?? 0) + n;
        expect(pitchAt(openNeck, { string, fret: fret(n) })).toBe(expected);
      }
    }
  });

  test("counts the short string by the neck: its fret 7 is two semitones above its open note", () => {
    // Common practice, no published source.
    expect(pitchAt(openNeck, { string: 5, fret: fret(7) })).toBe(69);
    expect(pitchAt(openNeck, { string: 5, fret: fret(0) })).toBe(67);
  });

  test("counts frets from the nut above a capo, and the capo raises open strings", () => {
    expect(pitchAt(capoed, { string: 3, fret: fret(9) })).toBe(64);
    expect(pitchAt(capoed, { string: 3, fret: fret(0) })).toBe(57);
    expect(pitchAt(capoed, { string: 5, fret: fret(0) })).toBe(69);
  });

  test("is the open string's where no finger can stop it", () => {
    expect(pitchAt(capoed, { string: 2, fret: fret(1) })).toBe(61);
    expect(pitchAt(openNeck, { string: 5, fret: fret(3) })).toBe(67);
  });
});
