import { type Tick, tick } from "../units.ts";
import type { Span } from "./score.ts";

/**
 * A way through the song, in whole ticks. Unrolled position 0 is `start`, counts on evenly for as
 * long as it is played, whatever is repeated, and is negative in the count-in.
 */
export type Run = {
  /** Where in the song playing starts. */
  readonly start: Tick;
  /** Played round and round; null plays to the end of the song. */
  readonly loop: Span | null;
  /** Where the song ends. */
  readonly end: Tick;
  /** How long is counted in before each further round of the loop; 0 is not at all. */
  readonly countIn: Tick;
};

/** A stretch of the song, and what to add to a tick in it for the unrolled position. */
export type Slice = {
  /** First tick of the song in it. */
  readonly from: Tick;
  /** First tick of the song after it; later than `from`. */
  readonly to: Tick;
  readonly offset: Tick;
  /** How often the run has started over before it. */
  readonly round: number;
};

/**
 * What of a loop lies within the song; null where nothing does.
 * @example loopWithin({ start: 960, end: 5760 }, 3840) // => { start: 960, end: 3840 }
 */
export const loopWithin = (loop: Span | null, end: Tick): Span | null => {
  if (!loop) {
    return null;
  }
  const start = tick(Math.max(0, loop.start));
  const stop = tick(Math.min(end, loop.end));
  return start < stop ? { start, end: stop } : null;
};

/** `first` is the unrolled position of `start`; what the lap has before that is its count-in. */
type Lap = {
  readonly first: Tick;
  readonly start: Tick;
  readonly end: Tick;
  readonly round: number;
};

const firstLap = (run: Run): Lap => {
  const loop = loopWithin(run.loop, run.end);
  const end = loop?.end ?? run.end;
  return {
    first: tick(0),
    start: loop && run.start >= end ? loop.start : run.start,
    end,
    round: 0,
  };
};

/** The lap that holds an unrolled position; the first one holds all before it too. */
const lapAt = (run: Run, unrolled: Tick): Lap => {
  const loop = loopWithin(run.loop, run.end);
  const first = firstLap(run);
  const leadIn = Math.max(0, first.end - first.start);
  if (!loop || unrolled < leadIn) {
    return first;
  }
  const round = run.countIn + loop.end - loop.start;
  const lap = Math.floor((unrolled - leadIn) / round);
  return { first: tick(leadIn + lap * round + run.countIn), ...loop, round: lap + 1 };
};

/**
 * The stretches of song that sound in the unrolled positions from `from` (included) to `to` (not),
 * in order. None for the count-ins, nor after the song's end where nothing loops. A run that starts
 * before its loop plays up to it and stays in; one that starts at or after its end begins with it.
 * @example slicesOf({ start: 0, loop: { start: 0, end: 960 }, end: 3840, countIn: 0 }, 480, 1200) // => [{ from: 480, to: 960, offset: 0, round: 0 }, { from: 0, to: 240, offset: 960, round: 1 }]
 */
export const slicesOf = (run: Run, from: Tick, to: Tick): readonly Slice[] => {
  const slices: Slice[] = [];
  let at = tick(Math.max(0, from));
  while (at < to) {
    const lap = lapAt(run, at);
    const offset = tick(lap.first - lap.start);
    const begin = Math.max(at, lap.first);
    const stop = tick(Math.min(to, lap.end + offset));
    if (stop <= begin) {
      break;
    }
    slices.push({
      from: tick(begin - offset),
      to: tick(stop - offset),
      offset,
      round: lap.round,
    });
    at = stop;
  }
  return slices;
};

/**
 * The stretches that are counted in, between `from` (included) and `to` (not), as slices of ticks
 * before 0: tick 0 is where the count-in leads, as in `countIn`.
 * @example countInsOf({ start: 0, loop: { start: 0, end: 960 }, end: 960, countIn: 480 }, 900, 1500) // => [{ from: -480, to: 0, offset: 1440, round: 1 }]
 */
export const countInsOf = (run: Run, from: Tick, to: Tick): readonly Slice[] => {
  const slices: Slice[] = [];
  let at = from;
  while (at < to) {
    const { first, start, end, round } = lapAt(run, at);
    const stop = Math.min(to, first);
    if (at < stop) {
      slices.push({ from: tick(at - first), to: tick(stop - first), offset: first, round });
    }
    const next = tick(first + Math.max(0, end - start));
    if (next <= at) {
      break;
    }
    at = next;
  }
  return slices;
};

/**
 * Where the count-in leads that is at an unrolled position; null outside a count-in.
 * @example countsInTo({ start: 960, loop: null, end: 3840, countIn: 0 }, -1) // => 960
 */
export const countsInTo = (run: Run, unrolled: Tick): Tick | null => {
  const lap = lapAt(run, unrolled);
  return unrolled < lap.first ? lap.start : null;
};

/**
 * How often a run has started over before an unrolled position; a count-in belongs to the round it
 * leads to.
 * @example roundAt({ start: 0, loop: { start: 0, end: 960 }, end: 3840, countIn: 0 }, 2000) // => 2
 */
export const roundAt = (run: Run, unrolled: Tick): number => lapAt(run, unrolled).round;

/**
 * Where in the song an unrolled position is: in a count-in as far before where it leads as it still
 * lasts (below 0 where that is the song's start), and never past the song's end.
 * @example songTickAt({ start: 960, loop: { start: 0, end: 1920 }, end: 3840, countIn: 0 }, 1000) // => 40
 */
export const songTickAt = (run: Run, unrolled: Tick): Tick => {
  const lap = lapAt(run, unrolled);
  return tick(Math.min(lap.end, lap.start + unrolled - lap.first));
};

/**
 * The unrolled position where the run is over; null for one that goes round.
 * @example endOf({ start: 960, loop: null, end: 3840, countIn: 0 }) // => 2880
 */
export const endOf = (run: Run): Tick | null =>
  loopWithin(run.loop, run.end) ? null : tick(Math.max(0, run.end - run.start));
