import { type Bpm, bpm } from "../units.ts";
import { itemId } from "./itemId.ts";
import type { Item, Mark, Round, Stage } from "./practice.ts";

/** All stages, the first the easiest. */
export const stages: readonly Stage[] = ["slide", "slow", "tempo", "song"];

/** So many of the last marks count: what was long ago says little of today. A design choice. */
const RECENT = 6;
/** A clean round counts for a tempo from this share of it on. A design choice. */
const NEARLY = 0.95;

const withRoll = (stage: Stage): boolean => stage !== "slide";

/** The rounds of one item, in the order of the list. */
export const roundsOf = (rounds: readonly Round[], item: Item): readonly Round[] => {
  const id = itemId(item);
  return rounds.filter((round) => itemId(round.item) === id);
};

/**
 * The last marks that say something of a tempo, the latest last, at most 6: clean ones with the roll
 * at that tempo or nearly (95 %), misses at any tempo up to it. `rounds` are in order of time.
 */
export const marksAt = (rounds: readonly Round[], tempo: Bpm): readonly Mark[] =>
  rounds
    .flatMap(({ mark, stage, tempo: at }): readonly Mark[] => {
      if (mark === "clean") return withRoll(stage) && at >= NEARLY * tempo ? [mark] : [];
      return mark !== null && at <= tempo ? [mark] : [];
    })
    .slice(-RECENT);

/** The fastest tempo at which an item was played clean in a stage, in beats a minute; null for none. */
export const cleanTempo = (rounds: readonly Round[], item: Item, stage: Stage): Bpm | null => {
  const clean = roundsOf(rounds, item).filter(
    (round) => round.mark === "clean" && round.stage === stage,
  );
  return clean.length === 0 ? null : bpm(Math.max(...clean.map(({ tempo }) => tempo)));
};

/**
 * The stage to begin an item with: the one after the last in which it was played clean, the bare slide
 * where there is none.
 */
export const nextStage = (rounds: readonly Round[], item: Item): Stage => {
  const own = roundsOf(rounds, item).filter(({ mark }) => mark === "clean");
  const last = Math.max(-1, ...own.map(({ stage }) => stages.indexOf(stage)));
  return stages[Math.min(last + 1, stages.length - 1)] ?? "slide";
};
