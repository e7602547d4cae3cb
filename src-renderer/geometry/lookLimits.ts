import type { Span } from "../../src-shared/score/score.ts";

/**
 * How far one can look from a tick, in ticks: back to the song's start, on to its end; with a loop,
 * to the end of its next round. In the count-in there is nothing to look back at.
 */
export const lookLimits = (
  tick: number,
  length: number,
  loop: Span | null,
): { readonly low: number; readonly high: number } => {
  const end = loop ? 2 * loop.end - loop.start : length;
  return { low: Math.min(0, -tick), high: Math.max(0, end - tick) };
};
