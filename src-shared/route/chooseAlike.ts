import { type Assignment, eliminate, type Factor } from "./eliminate.ts";
import type { Criterion, Path } from "./layers.ts";
import type { Problem } from "./problem.ts";
import { placeOf } from "./slot.ts";

type Alike = {
  /** For each slot its variable. */
  readonly variableOf: readonly number[];
  readonly widths: readonly number[];
};

const alikeSlots = ({ slots, voicings }: Problem): Alike => {
  const variables = new Map<string, number>();
  const widths: number[] = [];
  const variableOf = slots.map((slot, index) => {
    const known = variables.get(placeOf(slot));
    if (known !== undefined) {
      return known;
    }
    const fresh = variables.size;
    variables.set(placeOf(slot), fresh);
    widths.push(voicings[index]?.length ?? 0);
    return fresh;
  });
  return { variableOf, widths };
};

/** States that are closed for any slot of a variable. */
const openings = (
  problem: Problem,
  { variableOf, widths }: Alike,
  parts: number,
): readonly Factor[] =>
  widths.map((width, variable) => {
    const table = new Float64Array(width);
    for (const [layer, own] of variableOf.entries()) {
      if (own === variable) {
        for (const [state, open] of problem.layers.open(layer).entries()) {
          if (!open) {
            table[state] = Number.POSITIVE_INFINITY;
          }
        }
      }
    }
    return { variables: [variable], tables: Array.from({ length: parts }, () => table) };
  });

type Steps = readonly { readonly layer: number; readonly from: number; readonly to: number }[];

const stepsOf = ({ slots, goesRound }: Problem, { variableOf }: Alike): Steps => {
  const count = goesRound && slots.length > 1 ? slots.length : slots.length - 1;
  return Array.from({ length: Math.max(0, count) }, (_, layer) => ({
    layer,
    from: variableOf[layer] ?? 0,
    to: variableOf[(layer + 1) % slots.length] ?? 0,
  }));
};

/** One step's costs as a factor; a step from a place to itself depends on that place alone. */
const stepFactor = (
  { from, to }: Steps[number],
  widths: readonly number[],
  tables: readonly Float64Array[],
): Factor => {
  if (from !== to) {
    return { variables: [from, to], tables };
  }
  const width = widths[from] ?? 0;
  return {
    variables: [from],
    tables: tables.map((table) =>
      Float64Array.from({ length: width }, (_, state) => table[state * width + state] ?? 0),
    ),
  };
};

/** Steps that are ruled out before the next criterion is looked at. */
type Forbidden = (layer: number, edge: number) => boolean;

const bestBy = (
  problem: Problem,
  alike: Alike,
  criteria: readonly Criterion[],
  forbidden: Forbidden,
): Assignment | "too-wide" | null => {
  const tablesOf = (layer: number): readonly Float64Array[] =>
    criteria.map(({ costs }) =>
      costs(layer).map((cost, edge) => (forbidden(layer, edge) ? Number.POSITIVE_INFINITY : cost)),
    );
  return eliminate(
    alike.widths,
    [
      ...openings(problem, alike, criteria.length),
      ...stepsOf(problem, alike).map((step) =>
        stepFactor(step, alike.widths, tablesOf(step.layer)),
      ),
    ],
    criteria.map(({ by }) => by),
  );
};

/**
 * The best choice in which every place of the chart is held in the same voicing each time it is
 * played, by the problem's criteria in order, of which at most one is judged by the worst. null
 * where there is no choice, "too-wide" where the song's places hang together too closely to tell.
 */
export const chooseAlike = (problem: Problem): Path | "too-wide" | null => {
  const alike = alikeSlots(problem);
  const { criteria } = problem;
  const at = criteria.findIndex(({ by }) => by === "worst");
  const worst = criteria[at];
  let forbidden: Forbidden = () => false;
  let hardest: readonly number[] = [];
  if (worst) {
    // The worst step is settled first; among the steps that are no worse, the sums are then free.
    const settled = bestBy(problem, alike, criteria.slice(0, at + 1), forbidden);
    if (settled === null || settled === "too-wide") {
      return settled;
    }
    hardest = settled.costs.slice(at);
    const [most = 0] = hardest;
    forbidden = (layer, edge) => (worst.costs(layer)[edge] ?? 0) > most;
  }
  const sums = criteria.filter(({ by }) => by === "sum");
  const found = bestBy(problem, alike, sums, forbidden);
  if (found === null || found === "too-wide") {
    return found;
  }
  return {
    choice: alike.variableOf.map((variable) => found.states[variable] ?? 0),
    costs: worst
      ? [...found.costs.slice(0, at), ...hardest, ...found.costs.slice(at)]
      : found.costs,
  };
};
