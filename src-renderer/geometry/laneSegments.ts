import type { TimedBar } from "../../src-shared/chart/song.ts";
import type { Span } from "../../src-shared/score/score.ts";
import { type BarWindow, barsWithin } from "./visible.ts";

/** A stretch of the song as the lanes draw it. */
export type LaneSegment = {
  /** 0 is this time; 1 the loop's next round, and so on. */
  readonly round: number;
  readonly shown: BarWindow;
  /** Ticks to the right of the song's own place. */
  readonly offset: number;
};

/** Which rounds of a loop of a length some part of [from, to) ticks after its end belongs to. */
const roundsOf = (from: number, to: number, length: number): readonly number[] => {
  const first = Math.max(0, Math.floor(from / length));
  const count = Math.max(0, Math.ceil(to / length) - first);
  return Array.from({ length: count }, (_, index) => first + index);
};

/**
 * What the lanes show from one tick to another on an axis that goes on evenly after a loop's end:
 * the song up to there, then the loop again for as long as it takes. Without a loop, the song.
 */
export const laneSegments = (
  bars: readonly TimedBar[],
  from: number,
  to: number,
  loop: Span | null,
): readonly LaneSegment[] => {
  const song = {
    round: 0,
    shown: barsWithin(bars, from, loop ? Math.min(to, loop.end) : to),
    offset: 0,
  };
  const length = loop ? loop.end - loop.start : 0;
  const again =
    loop && length > 0
      ? roundsOf(from - loop.end, to - loop.end, length).map((each) => {
          const offset = (each + 1) * length;
          const [first, last] = [
            Math.max(loop.start, from - offset),
            Math.min(loop.end, to - offset),
          ];
          return { round: each + 1, shown: barsWithin(bars, first, last), offset };
        })
      : [];
  return [song, ...again].filter(({ shown }) => shown.end > shown.first);
};
