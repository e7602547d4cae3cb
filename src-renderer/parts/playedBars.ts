import type { TimedBar, TimedStay, Timeline } from "../../src-shared/chart/song.ts";
import type { Placement } from "../../src-shared/route/route.ts";

/** One chord's time within one bar of the song as played. */
export type PlayedChord = {
  readonly stay: TimedStay;
  /** It sounded already when the bar began. */
  readonly heldOver: boolean;
  /** Ticks of this bar. */
  readonly ticks: number;
  /** The placements that start within this time. */
  readonly placements: readonly Placement[];
};

/** One bar of the song as played, with its chords in order. */
export type PlayedBar = { readonly bar: TimedBar; readonly chords: readonly PlayedChord[] };

/** The bars of one section as played; a song without labels is one section. */
export type PlayedSection = { readonly label: string | null; readonly bars: readonly PlayedBar[] };

const chordsOf = (
  bar: TimedBar,
  stays: readonly TimedStay[],
  placements: readonly Placement[],
): readonly PlayedChord[] => {
  const end = bar.start + bar.length;
  return stays
    .filter((stay) => stay.start < end && stay.start + stay.length > bar.start)
    .map((stay) => {
      const from = Math.max(bar.start, stay.start);
      const to = Math.min(end, stay.start + stay.length);
      return {
        stay,
        heldOver: stay.start < bar.start,
        ticks: to - from,
        placements: placements.filter(({ start }) => start >= from && start < to),
      };
    });
};

/** The song as played, bar by bar under its sections, each chord with the shapes that begin on it. */
export const playedSections = (
  { bars, stays }: Timeline,
  placements: readonly Placement[],
): readonly PlayedSection[] => {
  const sections: { label: string | null; bars: PlayedBar[] }[] = [];
  for (const bar of bars) {
    const played = { bar, chords: chordsOf(bar, stays, placements) };
    const section = sections.at(-1);
    if (section && !bar.startsSection) section.bars.push(played);
    else sections.push({ label: bar.section, bars: [played] });
  }
  return sections;
};
