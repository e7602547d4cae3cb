import type { TimedBar, TimedStay, Timeline } from "../chart/song.ts";
import type { Chord } from "../harmony/chord.ts";
import { TICKS_PER_EIGHTH, type Tick, tick } from "../units.ts";

/** A stretch of the song that takes one voicing: a stay, or one of two parts of it. */
export type Slot = {
  /** 0-based among the stays as played. */
  readonly stay: number;
  /** 0-based bar in which it starts. */
  readonly bar: number;
  readonly start: Tick;
  readonly length: Tick;
  readonly chord: Chord;
  /** 0-based written bar in which it starts, and where in it, in eighth notes. */
  readonly written: number;
  readonly eighth: number;
  /** Which time that bar is played, from 0. */
  readonly time: number;
};

/** The name of a slot's place in the chart: the same whenever its bar is played. */
export const placeOf = ({ written, eighth, chord }: Slot): string =>
  `${written} ${eighth} ${chord.name}`;

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

/** For each bar as played, which time its written bar is played, from 0. */
const timesOf = (bars: readonly TimedBar[]): readonly number[] => {
  const played = new Map<number, number>();
  return bars.map(({ written }) => {
    const time = played.get(written) ?? 0;
    played.set(written, time + 1);
    return time;
  });
};

/**
 * The stretches that take a voicing each, in order; N.C. has none. With two to a chord, a stay of
 * two whole measures or more is parted at the bar line nearest to its middle, where one roll ends
 * and another starts.
 */
export const slotsOf = (
  timeline: Pick<Timeline, "stays" | "bars">,
  perChord: 1 | 2,
): readonly Slot[] => {
  const times = timesOf(timeline.bars);
  const slotAt = (
    stay: number,
    chord: Chord,
    barIndex: number,
    start: number,
    length: number,
  ): Slot => {
    const bar = timeline.bars[barIndex];
    if (!bar) {
      throw new Error(`stay ${stay} starts in bar ${barIndex} of ${timeline.bars.length}`);
    }
    return {
      stay,
      chord,
      bar: barIndex,
      start: tick(start),
      length: tick(length),
      written: bar.written,
      eighth: (start - bar.start) / TICKS_PER_EIGHTH,
      time: times[barIndex] ?? 0,
    };
  };
  return timeline.stays.flatMap((stay, index): readonly Slot[] => {
    const { chord, bar, start, length } = stay;
    if (chord === null) {
      return [];
    }
    const measure = timeline.bars[bar]?.length ?? length;
    const cut = perChord === 2 && length >= 2 * measure ? middleBarLine(stay, timeline.bars) : null;
    if (cut === null) {
      return [slotAt(index, chord, bar, start, length)];
    }
    const first = cut.start - start;
    return [
      slotAt(index, chord, bar, start, first),
      slotAt(index, chord, cut.index, cut.start, length - first),
    ];
  });
};
