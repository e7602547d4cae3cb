import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { easeMicrometres } from "../../../src-shared/route/cost.ts";
import { explain } from "../../../src-shared/route/explain.ts";
import { movePins, type Pin } from "../../../src-shared/route/pins.ts";
import { planRoute } from "../../../src-shared/route/planRoute.ts";
import { problemOf } from "../../../src-shared/route/problem.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { fret } from "../../../src-shared/units.ts";
import type { Voicing } from "../../../src-shared/voicing/voicing.ts";
import { voicingsOf } from "../../../src-shared/voicing/voicingsOf.ts";
import { timelineOf } from "../../laws/anyHeldSong.ts";
import { chordNamed, plainRequest } from "../../laws/plainRequest.ts";

const neck = neckFor(tunings[0], fret(0));
const request = plainRequest(14);
const wholeNeck = { low: fret(1), high: fret(22) };

const costOf = (voicings: readonly Voicing[]): number =>
  voicings.slice(1).reduce((sum, to, index) => {
    const from = voicings[index];
    return sum + (from ? easeMicrometres(from, to) : 0);
  }, 0);

const everyChoice = (layers: readonly (readonly Voicing[])[]): readonly (readonly Voicing[])[] =>
  layers.reduce<readonly (readonly Voicing[])[]>(
    (choices, layer) => choices.flatMap((choice) => layer.map((voicing) => [...choice, voicing])),
    [[]],
  );

const gripOf = (voicing: Voicing | undefined) => voicing?.frets.join();

describe("pins", () => {
  const anyPinned = fc
    .array(fc.constantFrom("G", "C", "D", "Am", "Em"), { minLength: 1, maxLength: 6 })
    .chain((names) =>
      fc
        .array(
          fc.record({
            bar: fc.nat(names.length - 1),
            voicing: fc.nat(9),
            kind: fc.constantFrom("hold" as const, "avoid" as const),
          }),
          { maxLength: 3 },
        )
        .map((drawn) => ({
          names,
          pins: drawn.map(({ bar, voicing, kind }): Pin => {
            const chord = chordNamed(names[bar] ?? "");
            const all = voicingsOf(chord, neck, wholeNeck, "3-2-1");
            const frets = all[voicing % all.length]?.frets ?? [null, null, null, null, null];
            return { kind, bar, eighth: 0, time: null, chord: chord.name, frets };
          }),
        })),
    );

  test("are met by the best route that meets them all, or their clash is said", () => {
    fc.assert(
      fc.property(anyPinned, ({ names, pins }) => {
        const song = timelineOf(names.map(chordNamed));
        const layers = names.map((name, bar) => {
          const own = pins.filter((pin) => pin.bar === bar);
          const held = own.filter((pin) => pin.kind === "hold").map((pin) => pin.frets.join());
          const avoided = own.filter((pin) => pin.kind === "avoid").map((pin) => pin.frets.join());
          const range = held.length > 0 ? wholeNeck : request.range;
          return voicingsOf(chordNamed(name), neck, range, "3-2-1").filter(
            (voicing) =>
              held.every((grip) => grip === gripOf(voicing)) &&
              !avoided.includes(gripOf(voicing) ?? ""),
          );
        });
        const plan = planRoute(song, neck, { ...request, pins });
        const possible = layers.every((layer) => layer.length > 0);
        expect(plan.kind === "route").toBe(possible);
        if (plan.kind === "route") {
          const least = Math.min(...everyChoice(layers).map(costOf));
          expect(costOf(plan.route.placements.map(({ voicing }) => voicing))).toBe(least);
        }
        if (plan.kind === "clash") {
          expect(plan.pins.length).toBeGreaterThanOrEqual(2);
          expect(new Set(plan.pins.map((pin) => pin.bar)).size).toBe(1);
        }
      }),
      { numRuns: 150 },
    );
  });

  test("that hold a slash chord without its bass tone leave it lowest elsewhere", () => {
    // G/B: string 3 is G3 open, so that B lies at its frets 4 and 16. The pin holds G/B at 7-8-9,
    // with D lowest.
    const pin: Pin = {
      kind: "hold",
      bar: 0,
      eighth: 0,
      time: null,
      chord: "G/B",
      frets: [9, 8, 7, null, null],
    };
    const { route } = chartToScore(
      "| G/B | C | G/B | C |",
      { ...wholeNeckPlan, pins: [pin] },
      null,
    );
    const lowest = route?.placements.map(({ voicing }) => voicing.frets[2]);
    expect(lowest?.[0]).toBe(7);
    expect([4, 16]).toContain(lowest?.[2]);
  });

  const g12: Pin = {
    kind: "hold",
    bar: 0,
    eighth: 0,
    time: 1,
    chord: "G",
    frets: [12, 12, 12, null, null],
  };
  const walk = (chart: string, pins: readonly Pin[]) =>
    chartToScore(chart, { ...wholeNeckPlan, fretHigh: 10, pins }, null);

  test("for one time leave the other times as they are", () => {
    const { route } = walk("|: G | C :|", [g12]);
    const positions = route?.placements.filter(({ chord }) => chord.name === "G");
    expect(positions?.map(({ voicing }) => voicing.position === 12)).toEqual([false, true]);
  });

  test("sleep while another chord stands in their place", () => {
    expect(
      walk("|: D | C :|", [g12]).route?.placements.every(({ voicing }) => voicing.position <= 10),
    ).toBe(true);
  });

  test("that clash are named with what each asks for and where", () => {
    const other: Pin = { ...g12, time: null, frets: [9, 8, 7, null, null] };
    const { route, notes } = walk("Key: G\n|: G | C :|", [g12, other]);
    expect(route).toBeNull();
    expect(notes.map(({ says, at }) => [says, at.line])).toEqual([
      ["G in bar 3 cannot be held at 12-12-12 (time 2) and held at 7-8-9 (every time) at once.", 2],
    ]);
  });

  test("for different times clash where every time is to be alike", () => {
    const first: Pin = { ...g12, time: 0, frets: [9, 8, 7, null, null] };
    const { route, notes } = chartToScore(
      "|: G | C :|",
      { ...wholeNeckPlan, alike: true, pins: [first, g12] },
      null,
    );
    expect(route).toBeNull();
    expect(notes.map(({ code }) => code)).toEqual(["pins-clash"]);
  });

  test("go with their bars when the chart is edited, and are dropped with them", () => {
    const pins = [0, 1, 2].map((bar): Pin => ({ ...g12, bar }));
    expect(movePins(pins, [3, null, 5]).map((pin) => pin.bar)).toEqual([3, 5]);
  });
});

describe("the explanation of a placement", () => {
  test("says for every other voicing what the best route through it costs more", () => {
    const names = ["G", "C", "Em", "D", "G"];
    const song = timelineOf(names.map(chordNamed));
    const plan = planRoute(song, neck, request);
    if (plan.kind !== "route") {
      throw new Error("no route");
    }
    const { voicings: layers } = problemOf(song, neck, request);
    const all = everyChoice(layers);
    const least = Math.min(...all.map(costOf));
    for (const index of names.keys()) {
      const { elsewhere, into, outOf } = explain(song, neck, request, plan.route, index);
      expect(into).toBe(plan.route.legs[index - 1] ?? null);
      expect(outOf).toBe(plan.route.legs[index] ?? null);
      expect(elsewhere.length).toBe((layers[index]?.length ?? 0) - 1);
      for (const { voicing, more } of elsewhere) {
        const through = all.filter((choice) => gripOf(choice[index]) === gripOf(voicing));
        expect(more).toEqual([Math.min(...through.map(costOf)) - least]);
      }
      const costs = elsewhere.map(({ more }) => more[0] ?? 0);
      expect(costs).toEqual(costs.toSorted((a, b) => a - b));
    }
  });
});
