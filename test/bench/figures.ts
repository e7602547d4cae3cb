import { appendFileSync, readFileSync } from "node:fs";

/** What a figure is to be; the share of it says how near it is: up to 1 is met. */
export type Goal =
  | { readonly below: number }
  | { readonly atLeast: number }
  | { readonly about: number }
  | null;

/** One line of the table that `npm run bench` ends with. */
export type Figure = {
  readonly area: "planner" | "sound" | "screen";
  readonly figure: string;
  readonly value: number;
  /** "" for a plain ratio. */
  readonly unit: string;
  readonly goal: Goal;
  /** What it is held against in the same run, with its value where it has one. */
  readonly peer: string;
  /** More than the number says. */
  readonly also?: string;
};

const digits = (value: number): string =>
  Math.abs(value) >= 100 || Number.isInteger(value) ? value.toFixed(0) : value.toPrecision(3);

const sayGoal = (goal: Goal, unit: string): string => {
  if (goal === null) {
    return "none set";
  }
  if ("below" in goal && goal.below === 0) {
    return "none";
  }
  const [[how = "", limit = 0] = []] = Object.entries(goal);
  return `${how === "atLeast" ? "at least" : how} ${digits(limit)}${unit === "" ? "" : ` ${unit}`}`;
};

const shareOf = (value: number, goal: Goal): string => {
  if (goal === null) {
    return "";
  }
  if ("below" in goal) {
    return goal.below === 0 ? (value <= 0 ? "met" : "missed") : (value / goal.below).toFixed(2);
  }
  return ("atLeast" in goal ? goal.atLeast / value : value / goal.about).toFixed(2);
};

const lineOf = ({ area, figure, value, unit, goal, peer, also }: Figure) => ({
  area,
  figure,
  measured: `${digits(value)}${unit === "" ? "" : ` ${unit}`}${also ? ` (${also})` : ""}`,
  goal: sayGoal(goal, unit),
  "of the goal": shareOf(value, goal),
  peer,
});

/** Prints figures as one table. */
export const printFigures = (figures: readonly Figure[]): void => {
  console.table(figures.map(lineOf));
};

/** Hands figures to the one table at the end of `npm run bench`; alone, prints them. */
export const tellFigures = (figures: readonly Figure[]): void => {
  const file = process.env["BENCH_FIGURES"];
  if (file === undefined) {
    printFigures(figures);
    return;
  }
  appendFileSync(file, figures.map((figure) => `${JSON.stringify(figure)}\n`).join(""));
};

/** All figures that were handed over in a run. */
export const readFigures = (file: string): readonly Figure[] =>
  readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line));
