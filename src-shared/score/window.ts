import type { Tick } from "../units.ts";
import type { Span } from "./score.ts";

/** How many of the first `count` places come before the first one that is `late`. */
const countBefore = (count: number, late: (index: number) => boolean): number => {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (late(middle)) {
      high = middle;
    } else {
      low = middle + 1;
    }
  }
  return low;
};

/**
 * The notes or hits that start in a span (its start included, its end not), found by binary search
 * in a list in order of tick. Empty where the span is empty or backward.
 * @example startingIn([{ tick: 0 }, { tick: 240 }, { tick: 480 }], { start: 240, end: 480 }) // => [{ tick: 240 }]
 */
export const startingIn = <T extends { readonly tick: Tick }>(
  events: readonly T[],
  span: Span,
): readonly T[] => {
  const before = (limit: Tick): number =>
    countBefore(events.length, (index) => (events[index]?.tick ?? limit) >= limit);
  return events.slice(before(span.start), before(span.end));
};

/**
 * Index of the bar, placement or stay that covers a tick, in a list in order of start; -1 before the
 * first, after the last and in a gap between two.
 * @example indexAt([{ start: 0, length: 960 }, { start: 960, length: 480 }], 960) // => 1
 */
export const indexAt = (
  stretches: readonly { readonly start: Tick; readonly length: Tick }[],
  at: Tick,
): number => {
  const index = countBefore(stretches.length, (place) => (stretches[place]?.start ?? at) > at) - 1;
  const stretch = stretches[index];
  return stretch && at < stretch.start + stretch.length ? index : -1;
};
