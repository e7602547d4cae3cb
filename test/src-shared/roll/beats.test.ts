import { describe, expect, test } from "vitest";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { isBeat, isStrong, patternMeterOf } from "../../../src-shared/roll/beats.ts";
import { fifthBelongs } from "../../../src-shared/roll/fifthBelongs.ts";
import { fret } from "../../../src-shared/units.ts";
import { chordNamed } from "../../laws/plainRequest.ts";

describe("a song's meter", () => {
  test.each([
    [4, 4, "4/4"],
    [2, 2, "4/4"],
    [3, 4, "3/4"],
    [6, 8, "6/8"],
    [2, 4, "2/4"],
  ] as const)("%i/%i takes the patterns of %s", (beats, unit, meter) => {
    expect(patternMeterOf({ beats, unit })).toBe(meter);
  });

  test("that no chart can have is our mistake, and says which", () => {
    expect(() => patternMeterOf({ beats: 5, unit: 4 } as never)).toThrow("no patterns for 5/4");
  });

  test("has its beats on quarters, in 6/8 on dotted ones, and its accents on some of them", () => {
    const among = (is: (eighth: number) => boolean) =>
      Array.from({ length: 12 }, (_, eighth) => eighth).filter(is);
    expect(among((at) => isBeat("4/4", at))).toEqual([0, 2, 4, 6, 8, 10]);
    expect(among((at) => isBeat("6/8", at))).toEqual([0, 3, 6, 9]);
    expect(among((at) => isStrong("4/4", at))).toEqual([0, 4, 8]);
    expect(among((at) => isStrong("3/4", at))).toEqual([0, 6]);
    expect(among((at) => isStrong("2/4", at))).toEqual([0, 4, 8]);
    expect(among((at) => isStrong("6/8", at))).toEqual([0, 3, 6, 9]);
  });
});

describe("the open fifth string", () => {
  // Open G: its fifth string is g, raised by the capo (common practice).
  test.each([
    ["G", 0, true],
    ["C", 0, true],
    ["Em", 0, true],
    ["D", 0, false],
    ["A", 2, true],
    ["G", 2, false],
  ] as const)("belongs to %s with the capo at %i: %s", (name, capo, belongs) => {
    expect(fifthBelongs(chordNamed(name), neckFor(tunings[0], fret(capo)))).toBe(belongs);
  });
});
