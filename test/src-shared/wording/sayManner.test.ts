import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import type { Leg } from "../../../src-shared/route/route.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { sayManner } from "../../../src-shared/wording/sayManner.ts";

const meter = { beats: 2, unit: 2 } as const;
const legAt = (tempo: number): Leg => {
  const { route } = chartToScore(
    "Key: G\nTime: 2/2\n| G | D |",
    { ...wholeNeckPlan, shapes: ["D"], fretHigh: 17 },
    tempo,
  );
  const leg = route?.legs[0];
  if (!leg) throw new Error("no change");
  return leg;
};

describe("how a change is made, in one line", () => {
  test("names the tempo up to which a change that is too fast can be made", () => {
    const says = sayManner(legAt(300), meter);
    const upTo = Number(/^Too fast at this tempo: up to (\d+)$/.exec(says)?.[1]);
    expect(legAt(upTo).way).not.toBe("too-fast");
    expect(legAt(upTo + 1).way).toBe("too-fast");
  });

  test("says what to do with the notes before a change that can be made", () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 120 }), (tempo) => {
        const leg = legAt(tempo);
        fc.pre(leg.way !== "too-fast");
        expect(["Keep every note", "Let the last note go", "Let two notes go"]).toContain(
          sayManner(leg, meter),
        );
      }),
    );
  });

  test("says nothing where nothing moves", () => {
    expect(sayManner({ way: "hold", shortestEighth: null }, meter)).toBe("");
  });
});
