import { grouped } from "./grouped.ts";
import { itemId } from "./itemId.ts";
import type { LogEntry } from "./logLine.ts";
import type { Due, Round } from "./practice.ts";

/**
 * When something is seen again. The rule is that of boxes with cards (Leitner 1972, from memory): what
 * went well waits twice as long, what did not comes back the next day. That spread practice keeps
 * better than massed practice is well shown (Cepeda et al. 2006, from memory); which gaps are best for
 * a banjo's changes, nobody has measured.
 */

/** The day of a moment (ms since 1970): whole days, counted from any one, each a night after the last. */
export type Calendar = (atMs: number) => number;

/** How many days it rests: after a poor day, then after each further good one. The last one stays. */
export const restDays: readonly number[] = [1, 2, 4, 8, 16];

/** The newest so many marked rounds of a day say how the day went. */
const ROUNDS_OF_A_DAY = 4;
/**
 * A day went well where so many of them were clean, or all where there were fewer. The share of clean
 * tries tells best what stays (Duke, Simmons and Cash 2009: pianists).
 */
const CLEAN_OF_A_DAY = 3;

/** Whether a day's marked rounds, in the order they were played, make it a good one. */
const wentWell = (rounds: readonly Round[]): boolean => {
  const last = rounds.slice(-ROUNDS_OF_A_DAY);
  const clean = last.filter(({ mark }) => mark === "clean").length;
  return clean >= Math.min(CLEAN_OF_A_DAY, last.length);
};

/** How an item stands: on which day it is due, and what it was played at. */
export type Standing = Due & {
  readonly id: string;
  /** The day on which it is to be seen again; on every day from then on it is due. */
  readonly dueOn: number;
};

const standingOf = (rounds: readonly Round[], dayOf: Calendar): Standing | null => {
  const last = rounds.at(-1);
  const marked = rounds.filter(({ mark }) => mark !== null);
  if (last === undefined || marked.length === 0) {
    return null;
  }
  let step = 0;
  let dueOn: number | null = null;
  for (const day of new Set(marked.map(({ atMs }) => dayOf(atMs)))) {
    if (!wentWell(marked.filter(({ atMs }) => dayOf(atMs) === day))) {
      step = 0;
    } else if (dueOn !== null && day >= dueOn) {
      // Played again before it was due, it has not waited that long: the gap stays.
      step = Math.min(step + 1, restDays.length - 1);
    }
    dueOn = day + (restDays[step] ?? 1);
  }
  const clean = marked.findLast(({ mark }) => mark === "clean");
  const { item, stage } = last;
  return { id: itemId(item), item, stage, tempo: clean?.tempo ?? null, dueOn: dueOn ?? 0 };
};

/**
 * How every item of a song stands that was ever marked; `song` null are the exercises. Days on which
 * nothing was marked count for nothing.
 */
export const standings = (
  log: readonly LogEntry[],
  song: string | null,
  dayOf: Calendar,
): readonly Standing[] => {
  const mine = log
    .filter((entry) => (entry.song?.id ?? null) === song)
    .map(({ round }) => round)
    .toSorted((one, other) => one.atMs - other.atMs);
  const byItem = grouped(mine, ({ item }) => itemId(item));
  return [...byItem.values()].flatMap((rounds) => standingOf(rounds, dayOf) ?? []);
};

/**
 * What is due on a day, the longest overdue first; where two are equally so, by name. What was last
 * marked today is never due today.
 */
export const dueItems = (
  log: readonly LogEntry[],
  song: string | null,
  today: number,
  dayOf: Calendar,
): readonly Due[] =>
  standings(log, song, dayOf)
    .filter(({ dueOn }) => dueOn <= today)
    .toSorted((one, other) => one.dueOn - other.dueOn || (one.id < other.id ? -1 : 1))
    .map(({ item, stage, tempo }) => ({ item, stage, tempo }));
