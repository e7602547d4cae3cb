import { describe, expect, test } from "vitest";
import { holdsEverything, sayPins } from "../../../src-renderer/parts/sayPins.ts";
import { planToSearch } from "../../../src-renderer/screens/play/routeQuestion.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { type Pin, pinsHolding } from "../../../src-shared/route/pins.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";

const walk = chartToScore("Title: Kiln\nKey: G\n|: G | C :| D |\n", wholeNeckPlan, null);
const pins = pinsHolding(
  walk.slots,
  (walk.route?.placements ?? []).map(({ voicing }) => voicing),
);
const avoid: Pin = {
  kind: "avoid",
  bar: 2,
  eighth: 0,
  time: null,
  chord: "D",
  frets: [1, 2, 3, null, null],
};

describe("the pins in words", () => {
  test("are counted by what they do", () => {
    expect(sayPins([], walk.slots)).toBe("No pins");
    expect(sayPins(pins.slice(0, 1), walk.slots)).toBe("1 grip held");
    expect(sayPins([...pins.slice(1), avoid], walk.slots)).toBe(
      `${pins.length - 1} grips held, 1 grip ruled out`,
    );
  });

  test("that hold every place leave no choice to the aim", () => {
    expect(sayPins(pins, walk.slots)).toBe(
      `${pins.length} grips held. No choice is left to the aim.`,
    );
  });

  test("sleep where another chord stands now", () => {
    expect(sayPins([{ ...avoid, chord: "Am" }], walk.slots)).toBe(
      "1 pin asleep: another chord stands there now",
    );
  });
});

describe("the search for other routes", () => {
  test("leaves out pins that hold the whole song, and only those", () => {
    expect(holdsEverything(pins, walk.slots)).toBe(true);
    expect(planToSearch({ ...wholeNeckPlan, pins }, walk).pins).toEqual([]);
    const some = pins.slice(1);
    expect(holdsEverything(some, walk.slots)).toBe(false);
    expect(planToSearch({ ...wholeNeckPlan, pins: some }, walk).pins).toBe(some);
    expect(planToSearch({ ...wholeNeckPlan, pins: [avoid] }, walk).pins).toEqual([avoid]);
  });
});
