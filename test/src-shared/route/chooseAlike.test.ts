import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readChart } from "../../../src-shared/chart/readChart.ts";
import { unfold } from "../../../src-shared/chart/unfold.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { neckFor } from "../../../src-shared/neck/neckFor.ts";
import { tunings } from "../../../src-shared/neck/tuningTable.ts";
import { plainPicking } from "../../../src-shared/roll/picking.ts";
import { chooseAlike } from "../../../src-shared/route/chooseAlike.ts";
import { handTable } from "../../../src-shared/route/handTable.ts";
import { type PlanRequest, type Problem, problemOf } from "../../../src-shared/route/problem.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { fret, milliseconds } from "../../../src-shared/units.ts";

const neck = neckFor(tunings[0], fret(0));

const anyAlike = fc.record({
  aim: fc.constantFrom("ease" as const, "travel" as const, "steady" as const, "climb" as const),
  goesRound: fc.boolean(),
  perChord: fc.constantFrom(1 as const, 2 as const),
});

const requestFor = (drawn: {
  readonly aim: PlanRequest["aim"];
  readonly goesRound: boolean;
  readonly perChord: 1 | 2;
}): PlanRequest => ({
  ...drawn,
  shapes: ["F", "D", "barre"],
  range: { low: fret(1), high: fret(13) },
  strings: "3-2-1",
  hand: handTable.default,
  eighth: milliseconds(150),
  alike: true,
  pins: [],
  picking: plainPicking,
  patterns: [],
});

/** Charts with repeats, endings and a form, so that places come again in different company. */
const anyChart = fc
  .tuple(
    fc.array(fc.constantFrom("G", "C", "D", "Em", "Am"), { minLength: 4, maxLength: 4 }),
    fc.constantFrom(
      "|: A | B :| C |",
      "|: A | B |[1 C :|[2 D |",
      "Form: X Y X\n[X] | A | B |\n[Y] | C |",
      "Form: X X Y X\n[X] | A | A | B |\n[Y] | C | D |",
      "| A | A | B | C |",
    ),
  )
  .map(([chords, shape]) =>
    shape.replace(/\b[ABCD]\b/g, (letter) => chords["ABCD".indexOf(letter)] ?? "G"),
  );

const placesOf = ({ slots }: Problem) =>
  slots.map((slot) => `${slot.written} ${slot.eighth} ${slot.chord.name}`);

/** What one choice comes to by each criterion. */
const worthOf = (problem: Problem, choice: readonly number[]): readonly number[] =>
  problem.criteria.map(({ by, costs }) => {
    const count = problem.slots.length;
    const steps = problem.goesRound && count > 1 ? count : count - 1;
    const values = Array.from({ length: steps }, (_, layer) => {
      const next = (layer + 1) % count;
      const width = problem.layers.width(next);
      return costs(layer)[(choice[layer] ?? 0) * width + (choice[next] ?? 0)] ?? Number.NaN;
    });
    return by === "sum" ? values.reduce((a, b) => a + b, 0) : Math.max(0, ...values);
  });

const compare = (a: readonly number[], b: readonly number[]): number =>
  a.map((value, index) => value - (b[index] ?? 0)).find((difference) => difference !== 0) ?? 0;

describe("a route that is the same each time", () => {
  test("is the best of all that are, as plain enumeration finds it", () => {
    fc.assert(
      fc.property(anyChart, anyAlike, (chart, drawn) => {
        const timeline = unfold(readChart(chart).value);
        const problem = problemOf(timeline, neck, requestFor(drawn));
        const places = placesOf(problem);
        const different = [...new Set(places)];
        const widthOf = (place: string) => problem.layers.width(places.indexOf(place));
        fc.pre(different.reduce((all, place) => all * widthOf(place), 1) <= 5000);
        let best: readonly number[] | null = null;
        const walk = (states: readonly number[]): void => {
          const place = different[states.length];
          if (place === undefined) {
            const choice = places.map((each) => states[different.indexOf(each)] ?? 0);
            const worth = worthOf(problem, choice);
            best = best === null || compare(worth, best) < 0 ? worth : best;
            return;
          }
          for (let state = 0; state < widthOf(place); state += 1) {
            walk([...states, state]);
          }
        };
        walk([]);
        const found = chooseAlike(problem);
        if (found === null || found === "too-wide") {
          throw new Error(`no choice: ${found}`);
        }
        expect(worthOf(problem, found.choice)).toEqual(best);
        const voicing = new Map<string, number>();
        for (const [index, place] of places.entries()) {
          expect(found.choice[index]).toBe(voicing.get(place) ?? found.choice[index]);
          voicing.set(place, found.choice[index] ?? -1);
        }
      }),
      { numRuns: 200 },
    );
  });

  test("says where it is not, in a song whose bars follow each other in too many ways", () => {
    const chords = ["D7", "G7", "E7", "C7", "A7", "Bm7", "Am7", "F7", "Dm7"];
    const names = chords.map((_, index) => String.fromCharCode(65 + index));
    // Every section stands beside every other: nine variables that all hang together.
    const form = names.flatMap((a, index) => names.slice(index + 1).flatMap((b) => [a, b]));
    const chart = [
      `Form: ${form.join(" ")}`,
      ...names.map((name, index) => `[${name}] | ${chords[index]} |`),
    ].join("\n");
    const plan = { ...wholeNeckPlan, alike: true };
    const { route, notes, slots, reading } = chartToScore(chart, plan, null);
    expect(route?.placements.length).toBe(form.length);
    expect(notes.map(({ code, severity }) => [code, severity])).toEqual([["not-alike", "hint"]]);
    const grips = new Map<string, string>();
    const unlike = route?.placements.find(({ chord, voicing }) => {
      const before = grips.get(chord.name) ?? voicing.frets.join();
      grips.set(chord.name, before);
      return before !== voicing.frets.join();
    });
    expect(notes[0]?.says).toContain(`${unlike?.chord.name} in bar ${(unlike?.bar ?? 0) + 1} `);
    const written = slots[unlike?.index ?? -1]?.written ?? -1;
    expect(notes[0]?.at.line).toBe(reading.bars[written]?.line);
    expect(chartToScore(chart, { ...plan, alike: false }, null).notes).toEqual([]);
    expect(chartToScore(chart, { ...plan, aim: "variety" }, null).notes).toEqual([]);
  });

  test("holds a repeated bar alike where a free route does not", () => {
    const chart = "|: G | C :| D | Em |";
    const positions = (alike: boolean) =>
      chartToScore(chart, { ...wholeNeckPlan, aim: "climb", alike }, null)
        .route?.placements.filter(({ chord }) => chord.name === "C")
        .map(({ voicing }) => voicing.position);
    const [first, second] = positions(true) ?? [];
    expect(first).toBe(second);
    const [free, later] = positions(false) ?? [];
    expect(free).not.toBe(later);
  });
});
