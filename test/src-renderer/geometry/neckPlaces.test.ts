import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fingerX, type NeckView } from "../../../src-renderer/geometry/neckGeometry.ts";
import {
  MARK_WIDTH,
  type NeckPlace,
  placeMarks,
  rowCount,
} from "../../../src-renderer/geometry/neckPlaces.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { fret } from "../../../src-shared/units.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { anyTonalChord } from "../../laws/anyHeldSong.ts";

const neck = neckFor(tunings[0], fret(0));
const view = (width: number): NeckView => ({
  scaleLength: neck.scaleLength,
  frets: { low: 0, high: neck.lastFret },
  left: 8,
  width,
  nutRight: false,
});
const anyPlaces = anyTonalChord.map((chord) =>
  voicingsOf(chord, neck, { low: fret(1), high: neck.lastFret }, "3-2-1").map(
    (voicing): NeckPlace => ({
      voicing,
      name: "",
      held: false,
      allowed: true,
      pin: "none",
      choices: [],
    }),
  ),
);

describe("the marks under the places of a chord", () => {
  test("stand under their places, one each, and never touch in a row", () => {
    fc.assert(
      fc.property(anyPlaces, fc.integer({ min: 880, max: 1600 }), (places, width) => {
        const marks = placeMarks(places, view(width));
        expect(new Set(marks.map(({ place }) => place))).toEqual(new Set(places));
        for (const [index, mark] of marks.entries()) {
          const frets = mark.place.voicing.frets.flatMap((each) => each ?? []);
          const middle =
            (fingerX(view(width), Math.min(...frets)) + fingerX(view(width), Math.max(...frets))) /
            2;
          expect(mark.x).toBeCloseTo(middle, 9);
          for (const other of marks.slice(0, index)) {
            if (other.row === mark.row) {
              expect(Math.abs(other.x - mark.x)).toBeGreaterThanOrEqual(MARK_WIDTH);
            }
          }
        }
      }),
    );
  });

  test("stand in as few rows as the first of them allow", () => {
    expect(rowCount([])).toBe(0);
    fc.assert(
      fc.property(anyPlaces, (places) => {
        const marks = placeMarks(places, view(1232));
        expect(rowCount(marks)).toBe(Math.max(0, ...marks.map(({ row }) => row + 1)));
        expect(rowCount(marks)).toBeLessThanOrEqual(4);
      }),
    );
  });
});
