import type { TimedBar } from "../../src-shared/chart/song.ts";

/** Bars `first` (included) to `end` (not) and the ticks that they fill. */
export type BarWindow = {
  readonly first: number;
  readonly end: number;
  readonly from: number;
  readonly to: number;
};

/** A part of the lanes is drawn for this many bars before it is changed. */
export const CHUNK_BARS = 4;

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

/** Number of the chunk of bars that a tick lies in. */
export const chunkAt = (bars: readonly TimedBar[], tick: number): number =>
  Math.floor(barAt(bars, tick) / CHUNK_BARS);

/**
 * The bars to draw while now is anywhere in a chunk: its own, and those within `behind` and `ahead`
 * ticks of it. Empty where there are no bars.
 */
export const windowOf = (
  bars: readonly TimedBar[],
  chunk: number,
  behind: number,
  ahead: number,
): BarWindow => {
  const firstOwn = bars[Math.min(chunk * CHUNK_BARS, bars.length - 1)];
  const lastOwn = bars[Math.min(chunk * CHUNK_BARS + CHUNK_BARS, bars.length) - 1];
  if (!firstOwn || !lastOwn) return { first: 0, end: 0, from: 0, to: 0 };
  const first = barAt(bars, firstOwn.start - behind);
  const last = barAt(bars, lastOwn.start + lastOwn.length + ahead);
  const from = bars[first]?.start ?? 0;
  const lastBar = bars[last] ?? lastOwn;
  return { first, end: last + 1, from, to: lastBar.start + lastBar.length };
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
