import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import {
  type PinScope,
  pinsOn,
  sleepingPins,
  withAvoid,
  withHold,
  withoutPins,
} from "../../../src-shared/route/editPins.ts";
import { clashAt, type Pin, pinsAllow } from "../../../src-shared/route/pins.ts";
import { pinsInTheWay } from "../../../src-shared/route/pinsInTheWay.ts";
import { planRoute } from "../../../src-shared/route/planRoute.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { fret } from "../../../src-shared/units.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";

const CHART = "Key: G\n|: G | C D :|\n| G | Em |";
const { slots, neck } = chartToScore(CHART, wholeNeckPlan, null);
const voicingAt = (slot: number, choice: number) => {
  const one = slots[slot];
  if (!one) throw new Error(`no slot ${slot}`);
  const all = voicingsOf(one.chord, neck, { low: fret(1), high: fret(22) }, "3-2-1");
  const voicing = all[choice % all.length];
  if (!voicing) throw new Error(`${one.chord.name} has no voicing`);
  return { slot: one, voicing, all };
};

type Step = { readonly slot: number; readonly choice: number; readonly does: PinScope | "avoid" };
const anyStep: fc.Arbitrary<Step> = fc.record({
  slot: fc.nat(slots.length - 1),
  choice: fc.nat(5),
  does: fc.constantFrom("this time" as const, "every time" as const, "avoid" as const),
});
const taken = (pins: readonly Pin[], { slot, choice, does }: Step): readonly Pin[] => {
  const here = voicingAt(slot, choice);
  return does === "avoid"
    ? withAvoid(pins, slots, here.slot, here.voicing)
    : withHold(pins, slots, here.slot, here.voicing, does);
};
const allowedAt = (pins: readonly Pin[], slot: number): readonly string[] => {
  const here = voicingAt(slot, 0);
  return here.all
    .filter((voicing) => pinsAllow(pins, here.slot, voicing))
    .map((voicing) => voicing.frets.join());
};

describe("pins set one after another", () => {
  test("never clash with those set before, and the last one has its way", () => {
    fc.assert(
      fc.property(fc.array(anyStep, { minLength: 1, maxLength: 12 }), (steps) => {
        const pins = steps.reduce(taken, [] as readonly Pin[]);
        expect(slots.flatMap((slot) => clashAt(pins, slot))).toEqual([]);
        const last = steps.at(-1);
        if (!last) throw new Error("no step");
        const grip = voicingAt(last.slot, last.choice).voicing.frets.join();
        if (last.does === "avoid") expect(allowedAt(pins, last.slot)).not.toContain(grip);
        else expect(allowedAt(pins, last.slot)).toEqual([grip]);
      }),
    );
  });

  test("for this time leave what is allowed at every other slot as it was", () => {
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 8 }), anyStep, (steps, drawn) => {
        const before = steps.reduce(taken, [] as readonly Pin[]);
        const after = taken(before, { ...drawn, does: "this time" });
        for (const slot of slots.keys()) {
          if (slot !== drawn.slot) expect(allowedAt(after, slot)).toEqual(allowedAt(before, slot));
        }
      }),
    );
  });

  test("can be taken off again by the voicing that they name", () => {
    const { slot, voicing } = voicingAt(0, 3);
    const pins = withHold([], slots, slot, voicing, "every time");
    expect(withoutPins(pins, pinsOn(pins, slot, voicing))).toEqual([]);
    const other = voicingAt(0, 4).voicing;
    expect(pinsOn(pins, slot, other)).toEqual([]);
  });
});

describe("pins that do nothing", () => {
  test("sleep where their chord or their time is gone", () => {
    const { slot, voicing } = voicingAt(0, 2);
    const [pin] = withHold([], slots, slot, voicing, "this time");
    if (!pin) throw new Error("no pin");
    const gone: readonly Pin[] = [
      { ...pin, chord: "Bb" },
      { ...pin, time: 6 },
    ];
    expect(sleepingPins([pin, ...gone], slots)).toEqual(gone);
  });
});

describe("pins in the way of a route", () => {
  const planned = (pins: readonly Pin[], fretHigh: number) => {
    const { timeline, request } = chartToScore(CHART, { ...wholeNeckPlan, fretHigh, pins }, null);
    return planRoute(timeline, neck, request);
  };
  const { slot, voicing, all } = voicingAt(0, 1);
  const other = all[2];
  if (!other) throw new Error("G has but two places");

  test("are those that clash, and without them there is a route", () => {
    const held = withHold([], slots, slot, voicing, "every time");
    const clashing = [...held, ...withHold([], slots, slot, other, "this time")];
    const inTheWay = pinsInTheWay(planned(clashing, 17), clashing);
    expect(inTheWay).toEqual(clashing);
    expect(planned(withoutPins(clashing, inTheWay), 17).kind).toBe("route");
  });

  test("are those that keep a chord off every place it has", () => {
    const off = all.reduce<readonly Pin[]>(
      (pins, each) => withAvoid(pins, slots, slot, each),
      withHold([], slots, voicingAt(1, 0).slot, voicingAt(1, 0).voicing, "this time"),
    );
    const inTheWay = pinsInTheWay(planned(off, 17), off);
    expect(inTheWay.length).toBe(all.length);
    expect(planned(withoutPins(off, inTheWay), 17).kind).toBe("route");
  });

  test("are those for one time where all times are to be held alike", () => {
    const apart = slots.filter((each) => each.written === 0);
    const pins = apart.reduce<readonly Pin[]>(
      (set, each, time) => withHold(set, slots, each, all[time] ?? voicing, "this time"),
      [],
    );
    const settings = { ...wholeNeckPlan, alike: true };
    const plannedWith = (some: readonly Pin[]) => {
      const walk = chartToScore(CHART, { ...settings, pins: some }, null);
      return planRoute(walk.timeline, neck, walk.request);
    };
    const inTheWay = pinsInTheWay(plannedWith(pins), pins);
    expect(inTheWay.length).toBe(2);
    expect(plannedWith(withoutPins(pins, inTheWay)).kind).toBe("route");
  });

  test("are none where there is a route", () => {
    expect(pinsInTheWay(planned([], 17), [])).toEqual([]);
  });
});
