import { type Tick, tick } from "../units.ts";
import type { Practice } from "./band.ts";
import type { Hit, Note, Score } from "./score.ts";
import { indexAt } from "./window.ts";

type Silences = NonNullable<Practice["silentBars"]>;

/**
 * Whether everyone drops out in a bar (0-based), where they play `play` bars and rest `rest` bars in
 * turn from bar `first` on.
 * @example [4, 5, 6, 7, 8].map((bar) => isSilentBar(bar, { play: 2, rest: 1 }, 4)) // => [false, false, true, false, false]
 */
export const isSilentBar = (bar: number, { play, rest }: Silences, first: number): boolean => {
  const period = play + rest;
  return (((bar - first) % period) + period) % period >= play;
};

/** A note that stops where a silence begins; a slide that would go on into it is left out. */
const noteUpTo = (note: Note, stop: Tick): Note => {
  if (note.until <= stop) {
    return note;
  }
  const { glide } = note;
  return { ...note, until: stop, glide: glide && glide.end <= stop ? glide : null };
};

const hitUpTo = (hit: Hit, stop: Tick): Hit =>
  hit.tick + hit.ticks > stop ? { ...hit, ticks: tick(stop - hit.tick) } : hit;

/**
 * The score with its silent bars: nothing is struck in them, and what rings is stopped where they
 * begin. Counted from bar `first` (0-based), the loop's first bar where there is one; the same in each
 * round.
 */
export const withSilentBars = (score: Score, silences: Silences, first: number): Score => {
  const silent = score.bars.map((bar) => isSilentBar(bar.index, silences, first));
  /** For each bar where the next silence after it begins. */
  const stops: Tick[] = [];
  let stop = tick(Number.POSITIVE_INFINITY);
  for (const [index, bar] of [...score.bars.entries()].toReversed()) {
    stops[index] = stop;
    stop = silent[index] ? bar.start : stop;
  }
  const sounding = <Stroke extends Note | Hit>(
    strokes: readonly Stroke[],
    upTo: (stroke: Stroke, stop: Tick) => Stroke,
  ): readonly Stroke[] =>
    strokes.flatMap((stroke) => {
      const bar = indexAt(score.bars, stroke.tick);
      const next = stops[bar];
      return silent[bar] || next === undefined ? [] : [upTo(stroke, next)];
    });
  return {
    ...score,
    notes: sounding(score.notes, noteUpTo),
    hits: sounding(score.hits, hitUpTo),
  };
};
