import { describe, expect, test } from "vitest";
import { chartToScore, whyHere } from "../../../src-shared/chartToScore.ts";
import type { Pin } from "../../../src-shared/route/pins.ts";
import { aims, wholeNeckPlan } from "../../../src-shared/settings.ts";
import { reformedFingers } from "../../../src-shared/voicing/fingering.ts";
import type { Voicing } from "../../../src-shared/voicing/voicing.ts";
import { sayChange, sayMore } from "../../../src-shared/wording/sayWhy.ts";

const CHART = "Title: Osier Bed\nKey: G\nTime: 4/4\nTempo: 120\n| G | G | C | Am | D | D7 | G |";

const walks = aims.flatMap((aim) =>
  ([1, 2] as const).map((perChord) =>
    chartToScore(CHART, { ...wholeNeckPlan, aim, perChord, fretHigh: 14 }, null),
  ),
);

/** The figure in a text, and what it is of. */
const figureIn = (says: string) => {
  const [, figure = "", rest = ""] = /(\d+)(.*)$/.exec(says) ?? [];
  return { figure: Number(figure), rest };
};

describe("what another place would cost", () => {
  test("is said in the units of the first criterion that differs, whatever the aim", () => {
    const units: Readonly<Record<string, number>> = { mm: 1000, "%": 10_000, more: 1 };
    let said = 0;
    for (const walk of walks) {
      for (const { index } of walk.route?.placements ?? []) {
        for (const { more } of whyHere(walk, index)?.elsewhere ?? []) {
          const first = more.find((value) => value !== 0) ?? 0;
          const says = sayMore(walk.request, more);
          if (first === 0) {
            expect(says).toBe("just as good");
            continue;
          }
          const { figure, rest } = figureIn(says);
          const unit = units[rest.trim().split(" ")[0] ?? ""] ?? Number.NaN;
          if (says.includes("under 1")) expect(first).toBeLessThan(unit / 2);
          else expect(figure).toBe(Math.round(first / unit));
          said += 1;
        }
      }
    }
    expect(said).toBeGreaterThan(100);
  });

  test("has words for every criterion that the planner judges by", () => {
    for (const walk of walks) {
      const count = walk.route?.costs.length ?? 0;
      expect(count).toBeGreaterThan(0);
      for (let index = 0; index < count; index += 1) {
        const more = Array.from({ length: count }, (_, k) => (k === index ? 5_000_000 : 0));
        expect(sayMore(walk.request, more)).not.toBe("just as good");
      }
      expect(sayMore(walk.request, [...Array<number>(count).fill(0), 7])).toBe("just as good");
    }
  });

  test("with ease is travel plus 60 mm for each finger placed anew, over the whole song", () => {
    // A song of two chords has one change, and with its end held only its start is left to choose.
    const walkOf = (pins: readonly Pin[]) =>
      chartToScore("Key: G\n| G | C |", { ...wholeNeckPlan, pins }, null);
    const [here, there] = walkOf([]).route?.placements ?? [];
    if (!here || !there) throw new Error("no route");
    const { frets } = there.voicing;
    const held = walkOf([{ kind: "hold", bar: 1, eighth: 0, time: null, chord: "C", frets }]);
    const effort = (from: Voicing) =>
      Math.abs(from.positionMm - there.voicing.positionMm) +
      60 * reformedFingers(from, there.voicing).length;
    const elsewhere = whyHere(held, 0)?.elsewhere ?? [];
    for (const { voicing, more } of elsewhere) {
      const mm = Math.round(effort(voicing) - effort(here.voicing));
      expect(sayMore(held.request, more)).toBe(`${mm} mm more`);
    }
    expect(elsewhere.length).toBeGreaterThan(2);
  });

  test.each([
    ["travel", 1, [54_400], "54 mm more travel"],
    ["steady", 1, [120_000, 5], "hardest change 12 % tighter"],
    ["steady", 1, [0, 310_000], "all changes together 31 % tighter"],
    ["region", 1, [1, -3_000], "1 more fret from lowest to highest"],
    ["region", 1, [0, 60_000], "60 mm more"],
    ["climb", 1, [81_000, 0, 0], "81 mm more down the neck"],
    ["climb", 1, [0, 43_000, 0], "43 mm less up the neck"],
    ["fall", 1, [81_000, 0, 0], "81 mm more up the neck"],
    ["variety", 1, [2, 0], "2 more chords back in the same place"],
    ["ease", 2, [1, -20_000], "1 more chord held in one place only"],
    ["region", 2, [0, 1, 0], "1 more chord held in one place only"],
    ["ease", 1, [300], "under 1 mm more"],
  ] as const)("by %s with %i a chord and %j is %s", (aim, perChord, more, says) => {
    expect(sayMore({ aim, perChord }, more)).toBe(says);
  });
});

describe("what a change costs", () => {
  test("is said with its way, its fingers and its time", () => {
    const { route } = chartToScore(
      "Key: G\nTempo: 60\n| G | C |",
      { ...wholeNeckPlan, shapes: ["D"], fretHigh: 14 },
      null,
    );
    const [leg] = route?.legs ?? [];
    if (!leg) throw new Error("no change");
    // Index finger from fret 7 to 12 of a neck of 666.75 mm: 333.4 - 221.7 mm (equal temperament).
    expect(sayChange(leg)).toBe(
      `Up 5, 112 mm. Every finger keeps its string. Needs ${Math.round(leg.need)} ms, has 500 ms.`,
    );
  });

  test("is nothing where the same grip stays", () => {
    const { route } = chartToScore("Key: G\n| G | N.C. | G |", wholeNeckPlan, null);
    const [leg] = route?.legs ?? [];
    if (!leg) throw new Error("no change");
    expect(sayChange(leg)).toBe("The hand stays as it is.");
  });
});
