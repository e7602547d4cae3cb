import { describe, expect, test } from "vitest";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { compareInOrder } from "../../../src-shared/route/compareInOrder.ts";
import {
  easeMicrometres,
  REFORMED_FINGER_MICROMETRES,
  riseMicrometres,
  travelMicrometres,
} from "../../../src-shared/route/cost.ts";
import { firstUnlike } from "../../../src-shared/route/firstUnlike.ts";
import { slotsOf } from "../../../src-shared/route/slot.ts";
import { fret } from "../../../src-shared/units.ts";
import type { ShapeName, Voicing } from "../../../src-shared/voicing/voicing.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { timelineOf } from "../../laws/anyHeldSong.ts";
import { chordNamed, plainRequest } from "../../laws/plainRequest.ts";

const neck = neckFor(tunings[0], fret(0));
const wholeNeck = { low: fret(1), high: fret(22) };
const held = (name: string, shape: ShapeName): Voicing => {
  const found = voicingsOf(chordNamed(name), neck, wholeNeck, "3-2-1").find(
    (each) => each.shape === shape,
  );
  if (!found) throw new Error(`no ${shape} of ${name}`);
  return found;
};

describe("what a change costs", () => {
  const low = held("G", "F");
  const high = held("A", "F");

  test("rises up the neck, falls back by as much, and travels the same either way", () => {
    const rise = riseMicrometres(low, high);
    expect(rise).toBeGreaterThan(0);
    expect(riseMicrometres(high, low)).toBe(-rise);
    expect([travelMicrometres(low, high), travelMicrometres(high, low)]).toEqual([rise, rise]);
    // Equal temperament: a wire at fret n of a string of length L lies at L (1 - 2^(-n/12)).
    const wire = (at: number) => neck.scaleLength * (1 - 2 ** (-at / 12));
    expect(rise / 1000).toBeCloseTo(wire(high.position) - wire(low.position), 2);
  });

  test("is travel alone where the grip slides, and 60 mm more for each finger formed anew", () => {
    expect(easeMicrometres(low, high)).toBe(travelMicrometres(low, high));
    expect(REFORMED_FINGER_MICROMETRES).toBe(60_000);
    const other = held("G", "D");
    const fingers = (easeMicrometres(low, other) - travelMicrometres(low, other)) / 60_000;
    expect([1, 2, 3]).toContain(fingers);
  });
});

describe("lists compared in order", () => {
  test("differ at the first place where they do, whatever comes after", () => {
    const sorted = [[], [0, 9], [1], [1, -5, 9], [1, 2], [1, 2, -1], [3]];
    expect(sorted.toReversed().toSorted(compareInOrder)).toEqual(sorted);
    expect(compareInOrder([2, 4], [2, 4])).toBe(0);
  });
});

describe("a place of the chart that is played twice", () => {
  // The first bar comes again as the third.
  const song = ["G", "C", "G", "C"];
  const timeline = timelineOf(song.map(chordNamed));
  const again = {
    ...timeline,
    bars: timeline.bars.map((bar, index) => ({ ...bar, written: index % 2 })),
  };
  const slots = slotsOf(again, neck, plainRequest(22));
  const [gLow, gHigh, c] = [held("G", "F"), held("G", "barre"), held("C", "F")];

  test("is told where it is first held otherwise", () => {
    expect(slots.length).toBe(4);
    expect(firstUnlike(slots, [gLow, c, gLow, c])).toBe(null);
    expect(firstUnlike(slots, [gLow, c, gHigh, c])).toBe(slots[2]);
    expect(firstUnlike(slots, [gLow, c, gHigh, gLow])).toBe(slots[2]);
    expect(firstUnlike(slots, [gLow, c, gLow, gLow])).toBe(slots[3]);
  });

  test("is compared with the same place alone", () => {
    const plain = slotsOf(timeline, neck, plainRequest(22));
    expect(firstUnlike(plain, [gLow, c, gHigh, gLow])).toBe(null);
  });
});
