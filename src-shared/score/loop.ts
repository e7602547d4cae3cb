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
};

/** A stretch of the song, and what to add to a tick in it for the unrolled position. */
export type Slice = {
  /** First tick of the song in it. */
  readonly from: Tick;
  /** First tick of the song after it; later than `from`. */
  readonly to: Tick;
  readonly offset: Tick;
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

type Lap = { readonly first: Tick; readonly start: Tick; readonly end: Tick };

/** The lap that holds an unrolled position from 0 on: its first position and its stretch of song. */
const lapAt = (run: Run, unrolled: Tick): Lap => {
  const loop = loopWithin(run.loop, run.end);
  const end = loop?.end ?? run.end;
  const leadIn = tick(Math.max(0, end - run.start));
  if (!loop || unrolled < leadIn) {
    return { first: tick(0), start: run.start, end };
  }
  const length = loop.end - loop.start;
  const lap = Math.floor((unrolled - leadIn) / length);
  return { first: tick(leadIn + lap * length), start: loop.start, end: loop.end };
};

/**
 * The stretches of song that sound in the unrolled positions from `from` (included) to `to` (not),
 * in order. None for the count-in, nor after the song's end where nothing loops. A run that starts
 * before its loop plays up to it and stays in; one that starts at or after its end begins with it.
 * @example slicesOf({ start: 0, loop: { start: 0, end: 960 }, end: 3840 }, 480, 1200) // => [{ from: 480, to: 960, offset: 0 }, { from: 0, to: 240, offset: 960 }]
 */
export const slicesOf = (run: Run, from: Tick, to: Tick): readonly Slice[] => {
  const slices: Slice[] = [];
  let at = tick(Math.max(0, from));
  while (at < to) {
    const lap = lapAt(run, at);
    const offset = tick(lap.first - lap.start);
    const stop = tick(Math.min(to, lap.end + offset));
    if (stop <= at) {
      break;
    }
    slices.push({ from: tick(at - offset), to: tick(stop - offset), offset });
    at = stop;
  }
  return slices;
};

/**
 * Where in the song an unrolled position is: before `start` in the count-in (below 0 where the run
 * starts with the song), and never past the song's end.
 * @example songTickAt({ start: 960, loop: { start: 0, end: 1920 }, end: 3840 }, 1000) // => 40
 */
export const songTickAt = (run: Run, unrolled: Tick): Tick => {
  if (unrolled < 0) {
    return tick(run.start + unrolled);
  }
  const lap = lapAt(run, unrolled);
  return tick(Math.min(lap.end, lap.start + unrolled - lap.first));
};

/**
 * The unrolled position where the run is over; null for one that goes round.
 * @example endOf({ start: 960, loop: null, end: 3840 }) // => 2880
 */
export const endOf = (run: Run): Tick | null =>
  loopWithin(run.loop, run.end) ? null : tick(Math.max(0, run.end - run.start));
