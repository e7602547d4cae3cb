import { REFORM_TIME } from "../route/movement.ts";
import { type Milliseconds, milliseconds } from "../units.ts";
import type { LogEntry } from "./logLine.ts";

/** What the marks of a player say about one shift with one time for it. */
export type HandMark = {
  /** How hard the shift is, above 0. */
  readonly bits: number;
  /** The time that was left for the shift itself: what forming fingers anew takes is taken off. */
  readonly window: Milliseconds;
  /** How often it was clean, and how often not yet. */
  readonly clean: number;
  readonly notYet: number;
};

/** A hand grows: the newest so many marks tell how it moves now. */
export const MARKS_THAT_COUNT = 400;

const tells = ({ round: { mark, shift } }: LogEntry): boolean =>
  mark !== null && shift !== null && shift.bits > 0;

/** How many marks that tell of the hand are newer than a moment, in ms since 1970. */
export const marksSince = (entries: readonly LogEntry[], sinceMs: number): number =>
  entries.filter((entry) => tells(entry) && entry.round.atMs > sinceMs).length;

/**
 * The marks that tell of the hand: rounds of one change that was marked and for which the hand had to
 * travel, the newest `MARKS_THAT_COUNT`, equal ones counted together. Rounds of several changes do not
 * say which one went wrong, and are left out.
 */
export const handMarksOf = (entries: readonly LogEntry[]): readonly HandMark[] => {
  const telling = entries
    .filter(tells)
    .toSorted((one, other) => one.round.atMs - other.round.atMs)
    .slice(-MARKS_THAT_COUNT);
  const marks = new Map<string, HandMark>();
  for (const { round } of telling) {
    const { shift, mark } = round;
    if (shift !== null) {
      const window = milliseconds(shift.window - REFORM_TIME * shift.reformed);
      const key = `${shift.bits} ${window}`;
      const before = marks.get(key) ?? { bits: shift.bits, window, clean: 0, notYet: 0 };
      marks.set(key, {
        ...before,
        clean: before.clean + (mark === "clean" ? 1 : 0),
        notYet: before.notYet + (mark === "clean" ? 0 : 1),
      });
    }
  }
  return [...marks.values()];
};

/** How many marks of each kind there are. */
export const countMarks = (
  marks: readonly HandMark[],
): { readonly clean: number; readonly notYet: number } => ({
  clean: marks.reduce((sum, { clean }) => sum + clean, 0),
  notYet: marks.reduce((sum, { notYet }) => sum + notYet, 0),
});
