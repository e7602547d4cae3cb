import { compareInOrder } from "./compareInOrder.ts";

/**
 * A cost that depends on a few variables: a table of tuples, the variables' states counted like the
 * digits of a number, the last variable's fastest. Infinity forbids.
 */
export type Factor = {
  /** Different variables, by their index. */
  readonly variables: readonly number[];
  /** One table for each part of the tuple. */
  readonly tables: readonly Float64Array[];
};

/** How the costs of factors are joined in one part of the tuple: added up, or the largest taken. */
export type Joined = "sum" | "worst";

/** A state for each variable, and what the choice comes to. */
export type Assignment = { readonly states: readonly number[]; readonly costs: readonly number[] };

/** Tables larger than this are not made. */
const MOST_ENTRIES = 4_000_000;

type Gone = {
  readonly variable: number;
  readonly around: readonly number[];
  /** For each combination of the states around, the best state of the variable. */
  readonly best: Uint16Array;
};

const sizeOf = (variables: readonly number[], widths: readonly number[]): number =>
  variables.reduce((size, variable) => size * (widths[variable] ?? 0), 1);

/** Where a combination of states stands in a factor's tables. */
const indexIn = (
  variables: readonly number[],
  widths: readonly number[],
  states: readonly number[],
): number =>
  variables.reduce(
    (index, variable) => index * (widths[variable] ?? 0) + (states[variable] ?? 0),
    0,
  );

/** Sets the states of `variables` to the n-th combination, in place: `states` is the caller's own. */
const setStates = (
  states: number[],
  variables: readonly number[],
  widths: readonly number[],
  n: number,
): void => {
  let rest = n;
  for (const variable of variables.toReversed()) {
    const width = widths[variable] ?? 1;
    states[variable] = rest % width;
    rest = Math.floor(rest / width);
  }
};

const neighbours = (factors: readonly Factor[], variable: number): readonly number[] =>
  [
    ...new Set(
      factors.filter((each) => each.variables.includes(variable)).flatMap((each) => each.variables),
    ),
  ]
    .filter((other) => other !== variable)
    .toSorted((a, b) => a - b);

/**
 * The states that make the joined cost least, by the first part of the tuples, then the second, and
 * so on, found by eliminating one variable after the other, the one with the smallest table first
 * (bucket elimination). A largest-taken part must be the last one: what it hides is not looked at
 * again. null where every choice is forbidden; "too-wide" where the variables hang
 * together so closely that a table would outgrow MOST_ENTRIES.
 */
export const eliminate = (
  widths: readonly number[],
  factors: readonly Factor[],
  joins: readonly Joined[],
): Assignment | "too-wide" | null => {
  const parts = joins.length;
  const starts = joins.map((joined) => (joined === "sum" ? 0 : Number.NEGATIVE_INFINITY));
  const join = (part: number, a: number, b: number): number =>
    joins[part] === "sum" ? a + b : Math.max(a, b);
  const left = new Set(widths.keys());
  const gone: Gone[] = [];
  const states: number[] = widths.map(() => 0);
  let open: readonly Factor[] = factors;
  while (left.size > 0) {
    const sized = [...left].map((variable) => {
      const around = neighbours(open, variable);
      return { variable, around, size: sizeOf(around, widths) };
    });
    const { variable, around, size } = sized.reduce((least, each) =>
      each.size < least.size ? each : least,
    );
    const width = widths[variable] ?? 0;
    if (size * width > MOST_ENTRIES) {
      return "too-wide";
    }
    const own = open.filter((each) => each.variables.includes(variable));
    const tables = Array.from({ length: parts }, () => new Float64Array(size));
    const best = new Uint16Array(size);
    for (let n = 0; n < size; n += 1) {
      setStates(states, around, widths, n);
      let least: readonly number[] = Array.from({ length: parts }, () => Number.POSITIVE_INFINITY);
      for (let state = 0; state < width; state += 1) {
        states[variable] = state;
        const costs = [...starts];
        for (const each of own) {
          const index = indexIn(each.variables, widths, states);
          for (let part = 0; part < parts; part += 1) {
            costs[part] = join(part, costs[part] ?? 0, each.tables[part]?.[index] ?? 0);
          }
        }
        if (compareInOrder(costs, least) < 0) {
          least = costs;
          best[n] = state;
        }
      }
      for (const [part, table] of tables.entries()) {
        table[n] = least[part] ?? Number.POSITIVE_INFINITY;
      }
    }
    open = [...open.filter((each) => !own.includes(each)), { variables: around, tables }];
    gone.push({ variable, around, best });
    left.delete(variable);
  }
  const costs = starts.map((start, part) =>
    open.reduce((total, each) => join(part, total, each.tables[part]?.[0] ?? 0), start),
  );
  if (costs.includes(Number.POSITIVE_INFINITY)) {
    return null;
  }
  for (const { variable, around, best } of gone.toReversed()) {
    states[variable] = best[indexIn(around, widths, states)] ?? 0;
  }
  return { states: [...states], costs };
};
