import type { Timeline } from "../../chart/song.ts";
import type { Hit, Score } from "../score.ts";
import { type BandPlan, bandBars } from "./bandBar.ts";
import { bassLine } from "./bassLine.ts";
import { chop } from "./chop.ts";
import { withEnding } from "./ending.ts";
import { guitarStrum } from "./guitarStrum.ts";

/**
 * Bass, guitar and chop for the whole song, in order of tick. What each plays stands with it; what
 * they agree on in `bandBars`.
 */
export const rhythmSection = (timeline: Timeline, plan: BandPlan): readonly Hit[] => {
  const bars = bandBars(timeline, plan);
  const bass = bassLine(bars);
  const hits = [...bass, ...guitarStrum(bars, bass), ...chop(bars)];
  return withEnding(hits, bars).toSorted((one, other) => one.tick - other.tick);
};

/** The score with what the rhythm section plays in it, in place of what it had. */
export const withBand = (score: Score, timeline: Timeline, plan: BandPlan): Score => ({
  ...score,
  hits: rhythmSection(timeline, plan),
});
