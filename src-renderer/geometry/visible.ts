import type { TimedBar } from "../../src-shared/chart/song.ts";

/** Bars `first` (included) to `end` (not) and the ticks that they fill. */
export type BarWindow = {
  readonly first: number;
  readonly end: number;
  readonly from: number;
  readonly to: number;
};

/** The lanes are drawn anew when so many bars have gone by: few, or a frame would have much to do. */
export const CHUNK_BARS = 1;

/** Index of the bar that a tick lies in, by halving; the first or last bar for a tick outside. */
export const barAt = (bars: readonly TimedBar[], tick: number): number => {
  let low = 0;
  let high = bars.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((bars[middle]?.start ?? 0) <= tick) low = middle;
    else high = middle - 1;
  }
  return Math.max(0, low);
};

/**
 * Number of the chunk that a tick lies in, for chunks of a length in ticks. They change in the middle
 * of a bar, where no chord does as a rule: two changes of the picture in one frame take too long.
 */
export const chunkAt = (tick: number, chunk: number): number => Math.floor(tick / chunk + 0.5);

/** The first tick of a chunk; the next one's is the first after it. */
export const chunkStart = (index: number, chunk: number): number => (index - 0.5) * chunk;

/** The bars of which some part lies in [from, to) ticks, whole; empty where there are none. */
export const barsWithin = (bars: readonly TimedBar[], from: number, to: number): BarWindow => {
  const end = bars.at(-1);
  const none = { first: 0, end: 0, from: 0, to: 0 };
  if (!end || from >= to || to <= 0 || from >= end.start + end.length) return none;
  const first = barAt(bars, from);
  const last = barAt(bars, to - 1);
  const lastBar = bars[last] ?? end;
  return {
    first,
    end: last + 1,
    from: bars[first]?.start ?? 0,
    to: lastBar.start + lastBar.length,
  };
};

/** Index of the first item for which `reached` holds; it must hold for all after it. */
const firstWhere = <T>(items: readonly T[], reached: (item: T) => boolean): number => {
  let low = 0;
  let high = items.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const item = items[middle];
    if (item !== undefined && reached(item)) high = middle;
    else low = middle + 1;
  }
  return low;
};

/** The stretches (in order, not overlapping) of which some part lies in [from, to) ticks. */
export const stretchesWithin = <T extends { readonly start: number; readonly length: number }>(
  items: readonly T[],
  from: number,
  to: number,
): readonly T[] =>
  items.slice(
    firstWhere(items, (item) => item.start + item.length > from),
    firstWhere(items, (item) => item.start >= to),
  );
