import type { Score, Span } from "../../src-shared/score/score.ts";
import { ticksPerBar, ticksPerBeat } from "../../src-shared/score/tempo.ts";
import { indexAt } from "../../src-shared/score/window.ts";
import { type Tick, tick } from "../../src-shared/units.ts";

/** What a placement has to say here: when it is held. */
export type Held = { readonly start: Tick; readonly length: Tick };

/** A tick in the player's words. */
export type Whereabouts = {
  /** 0-based; 0 where there are no bars. */
  readonly bar: number;
  /** 0-based, of the meter. */
  readonly beat: number;
  /** Index of the placement that is held; -1 is none. */
  readonly placement: number;
};

/**
 * Where a tick of the song is. In a count-in (`countsInTo` is where it leads, else null) the bar and
 * the placement are those that come, the beats those of the clicks. The end of the song is still its last bar.
 */
export const whereaboutsAt = (
  score: Score,
  placements: readonly Held[],
  at: Tick,
  countsInTo: Tick | null,
): Whereabouts => {
  const held = tick(Math.min(countsInTo ?? at, score.length - 1));
  const bar = Math.max(0, indexAt(score.bars, held));
  const full = ticksPerBar(score.meter);
  const into =
    countsInTo === null ? held - (score.bars[bar]?.start ?? 0) : full + ((at - countsInTo) % full);
  return {
    bar,
    beat: Math.floor((Math.max(0, into) % full) / ticksPerBeat(score.meter)),
    placement: indexAt(placements, held),
  };
};

/**
 * Where playing begins from a place: from the loop's start (the song's, without one) where that is
 * over; with a count-in from the start of the bar, or its clicks would not fit.
 */
export const startFrom = (score: Score, loop: Span | null, at: Tick, countInBars: number): Tick => {
  const over = at >= (loop?.end ?? score.length);
  const from = over ? (loop?.start ?? tick(0)) : at;
  const bar = countInBars > 0 ? score.bars[indexAt(score.bars, from)] : undefined;
  return bar?.start ?? from;
};

/**
 * The start of the bar so many on, or back where `by` is negative; the first step back goes to the
 * start of the bar itself once its first beat is over. Stays within the song.
 */
export const barsFrom = (score: Score, at: Tick, by: number): Tick => {
  const { bars, meter } = score;
  const here = Math.max(0, indexAt(bars, at));
  const begun = at - (bars[here]?.start ?? 0) >= ticksPerBeat(meter);
  const wanted = here + by + (by < 0 && begun ? 1 : 0);
  return bars[Math.max(0, Math.min(wanted, bars.length - 1))]?.start ?? tick(0);
};
