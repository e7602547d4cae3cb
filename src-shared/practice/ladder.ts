import { type Bpm, bpm } from "../units.ts";
import type { Mark } from "./practice.ts";

/**
 * How the tempo climbs; tempos in beats of the meter a minute. That a rising tempo teaches better than
 * any other order is not shown (Henley, J. Research in Music Education 49, 2001, found no difference);
 * what goes with keeping a passage is the share of clean rounds, not time spent (Duke, Simmons and
 * Cash, J. Research in Music Education 56, 2009). So a step waits for clean rounds.
 */
export type LadderPlan = {
  /** Where it begins; above the goal it is the goal. */
  readonly start: Bpm;
  /** It never goes above this. */
  readonly goal: Bpm;
  /** It never goes below this. */
  readonly floor: Bpm;
  /** How far a step is; above 0. */
  readonly step: number;
  /** How many rounds are looked at; at least 1. */
  readonly rounds: number;
  /** How many of them must be clean to go up, 1 to `rounds`. */
  readonly clean: number;
  /** Steps to go back where they cannot be any more; 0 stays and tries again. */
  readonly back: number;
  /** `marks`: the player's marks decide; `rounds`: every round counts as clean that is not marked a miss. */
  readonly by: "marks" | "rounds";
};

/** Where a ladder stands. */
export type Ladder = {
  readonly plan: LadderPlan;
  readonly tempo: Bpm;
  /** What counts at this tempo, the latest last; fewer than `plan.rounds`. */
  readonly marks: readonly Mark[];
  /** Nothing counts meanwhile. */
  readonly paused: boolean;
  /** The goal has been played clean as often as asked. */
  readonly done: boolean;
};

/** What happens on a ladder. */
export type LadderEvent =
  | { readonly kind: "round"; readonly mark: Mark | null }
  | { readonly kind: "pause" }
  | { readonly kind: "resume" };

const within = ({ floor, goal }: LadderPlan, tempo: number): Bpm =>
  bpm(Math.min(goal, Math.max(Math.min(floor, goal), tempo)));

/** A step as a share of the goal: 4 %; 3 to 5 % are felt (Drake and Botte, 1993). */
const STEP_SHARE = 0.04;
/** The slowest a ladder goes, as a share of its goal. A design choice. */
const FLOOR_SHARE = 0.4;

/**
 * The usual ladder from one tempo to another: three clean of the last four, one step of about 4 % of
 * the goal, one step back after two misses.
 * @example usualLadder(60, 100).step // => 4
 */
export const usualLadder = (start: Bpm, goal: Bpm): LadderPlan => ({
  start,
  goal,
  floor: bpm(Math.min(start, Math.max(1, Math.round(goal * FLOOR_SHARE)))),
  step: Math.max(1, Math.round(goal * STEP_SHARE)),
  rounds: 4,
  clean: 3,
  back: 1,
  by: "marks",
});

/** A ladder before its first round. */
export const ladderOf = (plan: LadderPlan): Ladder => ({
  plan,
  tempo: within(plan, plan.start),
  marks: [],
  paused: false,
  done: false,
});

/** How many clean rounds are still missing for the next step; 0 or more. */
export const cleanMissing = ({ plan, marks }: Ladder): number =>
  plan.clean - marks.filter((mark) => mark === "clean").length;

const counted = ({ plan }: Ladder, mark: Mark | null): Mark | null =>
  plan.by === "rounds" ? (mark ?? "clean") : mark;

const afterRound = (ladder: Ladder, mark: Mark): Ladder => {
  const { plan, tempo } = ladder;
  const marks = [...ladder.marks, mark].slice(-plan.rounds);
  const clean = marks.filter((each) => each === "clean").length;
  if (clean >= plan.clean) {
    const done = ladder.done || tempo >= plan.goal;
    return { ...ladder, tempo: within(plan, tempo + plan.step), marks: [], done };
  }
  const misses = marks.length - clean;
  if (misses > plan.rounds - plan.clean) {
    return { ...ladder, tempo: within(plan, tempo - plan.back * plan.step), marks: [] };
  }
  return { ...ladder, marks };
};

/**
 * What a ladder becomes. Up one step where enough of the last rounds were clean, back where they
 * cannot be any more; a round without a mark changes nothing where marks decide. While it is paused
 * no round counts.
 */
export const climb = (ladder: Ladder, event: LadderEvent): Ladder => {
  switch (event.kind) {
    case "pause":
      return ladder.paused ? ladder : { ...ladder, paused: true };
    case "resume":
      return ladder.paused ? { ...ladder, paused: false } : ladder;
    case "round": {
      const mark = ladder.paused ? null : counted(ladder, event.mark);
      return mark === null ? ladder : afterRound(ladder, mark);
    }
  }
};

/** A number of a ladder's plan that a player may set. */
export type LadderPart = "start" | "goal" | "step" | "rounds" | "clean" | "back";

/** The least and the most of each number, both included; tempos in beats of the meter a minute. */
export const limitsOf = ({
  goal,
  rounds,
}: Pick<LadderPlan, "goal" | "rounds">): Readonly<
  Record<LadderPart, { readonly low: number; readonly high: number }>
> => ({
  start: { low: 1, high: goal },
  goal: { low: 1, high: 320 },
  step: { low: 1, high: 50 },
  rounds: { low: 1, high: 12 },
  clean: { low: 1, high: rounds },
  back: { low: 0, high: 5 },
});

/**
 * The plan with one number set, as near to what is wanted as its limits allow, rounded to a whole one;
 * what is no number changes nothing. Whatever hangs on it goes along: no start above the goal, no more
 * clean rounds asked for than are looked at.
 */
export const withPart = (plan: LadderPlan, part: LadderPart, wanted: number): LadderPlan => {
  if (!Number.isFinite(wanted)) return plan;
  const { low, high } = limitsOf(plan)[part];
  const set = { ...plan, [part]: Math.min(high, Math.max(low, Math.round(wanted))) };
  const start = bpm(Math.min(set.start, set.goal));
  const floor = bpm(Math.min(set.floor, start));
  return { ...set, start, floor, clean: Math.min(set.clean, set.rounds) };
};
