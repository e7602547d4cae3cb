import type { TimedBar, TimedStay, Timeline } from "../chart/song.ts";
import type { Chord } from "../harmony/chord.ts";
import { type Tick, tick } from "../units.ts";

/** A stretch of the song that takes one voicing: a stay, or one of two parts of it. */
export type Slot = {
  /** 0-based among the stays as played. */
  readonly stay: number;
  /** 0-based bar in which it starts. */
  readonly bar: number;
  readonly start: Tick;
  readonly length: Tick;
  readonly chord: Chord;
};

/** The bar line inside a stay that is nearest to its middle, the later of two; null if none is. */
const middleBarLine = (stay: TimedStay, bars: readonly TimedBar[]): TimedBar | null => {
  const middle = stay.start + stay.length / 2;
  let best: TimedBar | null = null;
  for (let index = stay.bar + 1; index < bars.length; index += 1) {
    const bar = bars[index];
    if (!bar || bar.start >= stay.start + stay.length) {
      break;
    }
    if (best === null || Math.abs(bar.start - middle) <= Math.abs(best.start - middle)) {
      best = bar;
    }
  }
  return best;
};

/**
 * The stretches that take a voicing each, in order; N.C. has none. With two to a chord, a stay of
 * two whole measures or more is parted at the bar line nearest to its middle, where one roll ends
 * and another starts.
 */
export const slotsOf = (
  timeline: Pick<Timeline, "stays" | "bars">,
  perChord: 1 | 2,
): readonly Slot[] =>
  timeline.stays.flatMap((stay, index): readonly Slot[] => {
    const { chord, bar, start, length } = stay;
    if (chord === null) {
      return [];
    }
    const whole: Slot = { stay: index, bar, start, length, chord };
    const measure = timeline.bars[bar]?.length ?? length;
    const cut = perChord === 2 && length >= 2 * measure ? middleBarLine(stay, timeline.bars) : null;
    if (cut === null) {
      return [whole];
    }
    const first = tick(cut.start - start);
    return [
      { ...whole, length: first },
      { ...whole, bar: cut.index, start: cut.start, length: tick(length - first) },
    ];
  });
