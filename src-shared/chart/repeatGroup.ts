import type { Bar } from "./song.ts";

/** One ending of a repeated passage: bars `from` up to but not including `to`. */
export type Ending = {
  readonly passes: readonly number[];
  readonly from: number;
  readonly to: number;
};

/** What of a bar says how it is repeated. */
export type Repeated = Omit<Bar, "stays">;

/** A repeated passage of one section: bars `from` up to `to`, endings included. */
export type RepeatGroup = {
  readonly from: number;
  /** First bar behind what every pass plays: the first ending, or `to`. */
  readonly stem: number;
  readonly endings: readonly Ending[];
  readonly to: number;
  /** How many times it is played. */
  readonly plays: number;
};

/**
 * The repeated passage that starts at a bar which opens a repeat; null where nothing closes it
 * before the next one opens or the section ends.
 */
export const repeatGroup = (bars: readonly Repeated[], from: number): RepeatGroup | null => {
  const endings: { passes: readonly number[]; from: number; to: number }[] = [];
  let stem: number | null = null;
  let plays = 1;
  let inEnding = false;
  let at = from;
  for (; at < bars.length; at += 1) {
    const bar = bars[at];
    if (bar === undefined || (bar.opensRepeat && at > from)) break;
    if (bar.ending !== null) {
      endings.push({ passes: bar.ending, from: at, to: bars.length });
      stem ??= at;
      inEnding = true;
    }
    const current = endings.at(-1);
    if (current !== undefined && inEnding) current.to = at + 1;
    // The first repeat end says how often; a later one only closes its own ending.
    if (bar.plays > 1 && plays === 1) plays = bar.plays;
    if (bar.plays > 1 || (inEnding && bar.endsEnding)) {
      inEnding = false;
      const next = bars[at + 1];
      const goesOn = stem !== null && next !== undefined && next.ending !== null;
      if (!(goesOn && !next.opensRepeat)) {
        at += 1;
        break;
      }
    }
  }
  if (plays === 1) return null;
  const times = endings.reduce((most, ending) => Math.max(most, ...ending.passes), plays);
  return { from, stem: stem ?? at, endings, to: at, plays: times };
};
