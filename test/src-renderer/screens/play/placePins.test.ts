import { describe, expect, test } from "vitest";
import {
  asleep,
  inTheWay,
  isPinned,
  pinsChosen,
  placesOf,
} from "../../../../src-renderer/screens/play/placePins.ts";
import { chartToScore } from "../../../../src-shared/chartToScore.ts";
import type { Pin } from "../../../../src-shared/route/pins.ts";
import { newSongSettings } from "../../../../src-shared/settings.ts";

const walkOf = (chart: string, pins: readonly Pin[] = [], fretHigh = 14) =>
  chartToScore(
    `Title: Fen Drain\nKey: G\n${chart}\n`,
    { ...newSongSettings.plan, fretHigh, pins },
    null,
  );
const nth = (walk: ReturnType<typeof walkOf>, placement: number, name: string) => {
  const place = placesOf(walk, placement).find((each) => each.name === name);
  if (!place) throw new Error(`no place ${name}`);
  return place;
};

describe("the places of a chord", () => {
  // G in open G on strings 3-2-1: F shape with its index finger at 3 and 15, D shape at 7 and 19,
  // barre at 12 (common practice, no published source).
  test("are all there are on the neck; those out of the route's reach are told apart", () => {
    expect(placesOf(walkOf("| G | C |"), 0).map(({ name, allowed }) => [name, allowed])).toEqual([
      ["G, F shape, fret 3", true],
      ["G, D shape, fret 7", true],
      ["G, barre, fret 12", true],
      ["G, F shape, fret 15", false],
      ["G, D shape, fret 19", false],
    ]);
  });

  test("are named by their frets too where shape and fret are the same", () => {
    for (const chord of ["C7", "Am7", "Bdim7", "F#m7b5"]) {
      const names = placesOf(walkOf(`| ${chord} |`), 0).map(({ name }) => name);
      expect(names.length).toBeGreaterThan(3);
      expect(new Set(names).size).toBe(names.length);
    }
  });

  test("are none where no chord is held", () => {
    expect(placesOf(walkOf("| G | C |"), -1)).toEqual([]);
    expect(placesOf(walkOf("| G |", [], 1), 0)).toEqual([]);
  });

  test("cannot be pinned for one time where all times are held alike", () => {
    const plan = { ...newSongSettings.plan, alike: true };
    const walk = chartToScore("Key: G\n|: G | C :|", plan, null);
    const [place] = placesOf(walk, 0);
    if (!place) throw new Error("no place");
    expect(place.choices).toEqual(["every time", "avoid"]);
    expect(pinsChosen(walk, 0, place.voicing, "this time")).toMatchObject([{ time: null }]);
    expect(placesOf(walkOf("| G |"), 0)[0]?.choices).toEqual(["this time", "every time", "avoid"]);
  });

  test("show their pins", () => {
    const before = walkOf("| G | C |");
    const { voicing } = nth(before, 0, "G, F shape, fret 15");
    const held = walkOf("| G | C |", pinsChosen(before, 0, voicing, "every time"));
    expect(nth(held, 0, "G, F shape, fret 15")).toMatchObject({ held: true, pin: "hold" });
    expect([isPinned(held, 0), isPinned(held, 1), isPinned(before, 0)]).toEqual([
      true,
      false,
      false,
    ]);
    const off = walkOf("| G | C |", pinsChosen(held, 0, voicing, "avoid"));
    expect(nth(off, 0, "G, F shape, fret 15")).toMatchObject({ held: false, pin: "avoid" });
    expect(pinsChosen(off, 0, voicing, "off")).toEqual([]);
  });
});

describe("the pins of a song", () => {
  const before = walkOf("| G | C |");
  const pins = pinsChosen(before, 1, nth(before, 1, "C, barre, fret 5").voicing, "this time");

  test("sleep when their chord is gone", () => {
    expect(asleep(walkOf("| G | C |", pins))).toEqual([]);
    expect(asleep(walkOf("| G | Am |", pins))).toEqual(pins);
  });

  test("are in the way only where there is no route", () => {
    expect(inTheWay(walkOf("| G | C |", pins))).toEqual([]);
    const [pin] = pins;
    if (!pin) throw new Error("no pin");
    const clash = [...pins, { ...pin, time: null, frets: [12, 13, 12, null, null] } satisfies Pin];
    const walk = walkOf("| G | C |", clash);
    expect(walk.route).toBeNull();
    expect(inTheWay(walk)).toEqual(clash);
  });
});
