import { type Tick, tick } from "../units.ts";
import type { Practice } from "./band.ts";
import { loopWithin } from "./loop.ts";
import type { Hit, Note, Score, Span } from "./score.ts";
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
 * begin. Counted from bar `first` (0-based); below 0 it has been counted before the song's start.
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

/**
 * The score of each round of a loop, the first being 0: silent bars are counted from its first bar
 * and on through its rounds, so that a loop of four bars with four to play and four to rest is silent
 * every other time. Where nothing loops there is only round 0, counted from the song's first bar.
 */
export const silentRounds = (
  score: Score,
  silences: Silences | null,
  loop: Span | null,
): ((round: number) => Score) => {
  if (!silences) {
    return () => score;
  }
  const within = loopWithin(loop, score.length);
  const first = within ? indexAt(score.bars, within.start) : 0;
  const last = within ? indexAt(score.bars, tick(within.end - 1)) : score.bars.length - 1;
  const made = new Map<number, Score>();
  return (round) => {
    const counted = (round * (last - first + 1)) % (silences.play + silences.rest);
    const known = made.get(counted) ?? withSilentBars(score, silences, first - counted);
    made.set(counted, known);
    return known;
  };
};
