import { Midi, Note } from "tonal";
import { describe, expect, test } from "vitest";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { everyPlace, placesOf } from "../../../src-shared/neck/placesOf.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { fret } from "../../../src-shared/units.ts";

/** Open G by its note names, string 1 first, counted up in semitones by tonal. */
const open = ["D4", "B3", "G3", "D3", "G4"];
const soundsAt = (string: number, n: number, capo: number): string => {
  const nut = string === 5 ? 5 : 0;
  const above = n === 0 ? capo : n - nut;
  return Midi.midiToNoteName((Note.midi(open[string - 1] ?? "") ?? 0) + above, {
    pitchClass: true,
    sharps: true,
  });
};

describe("the places of a note on the neck", () => {
  test.each([0, 2, 5])("with the capo at %i are those where tonal counts up to it", (capo) => {
    const neck = neckFor(tunings[0], fret(capo));
    for (const name of ["G", "C#", "D", "F"]) {
      const found = placesOf(neck, Note.chroma(name)).map(
        ({ string, fret: n }) => `${string}:${n}`,
      );
      const counted = [1, 2, 3, 4, 5].flatMap((string) => {
        const first = capo + 1 + (string === 5 ? 5 : 0);
        const frets = [0, ...Array.from({ length: 23 - first }, (_, index) => first + index)];
        return frets.filter((n) => soundsAt(string, n, capo) === name).map((n) => `${string}:${n}`);
      });
      expect(found.toSorted()).toEqual(counted.toSorted());
    }
  });

  test("of G in open G are the open third and fifth strings, and an octave above them", () => {
    const found = placesOf(neckFor(tunings[0], fret(0)), 7);
    const on = (string: number) =>
      found.filter((place) => place.string === string).map((place) => place.fret);
    expect([on(3), on(5)]).toEqual([
      [0, 12],
      [0, 17],
    ]);
  });

  test("are on none of the short string's missing frets, and on none under a capo", () => {
    const places = everyPlace(neckFor(tunings[0], fret(3)));
    expect(places.filter(({ string, fret: n }) => string === 5 && n > 0 && n < 9)).toEqual([]);
    expect(places.filter(({ fret: n }) => n > 0 && n < 4)).toEqual([]);
  });
});
