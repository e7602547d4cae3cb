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
  return stays.map((stay) => {
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

type Timed = { readonly start: number; readonly length: number };

/**
 * Hands out, bar after bar, those of the given that sound in it. All are in order of time, so each
 * is looked at once and not once for every bar.
 */
const inTurn = <Each extends Timed>(all: readonly Each[]): ((bar: TimedBar) => readonly Each[]) => {
  let first = 0;
  return (bar) => {
    while ((all[first]?.start ?? 0) + (all[first]?.length ?? 1) <= bar.start && first < all.length)
      first += 1;
    let last = first;
    while (last < all.length && (all[last]?.start ?? 0) < bar.start + bar.length) last += 1;
    return all.slice(first, last);
  };
};

/** The song as played, bar by bar under its sections, each chord with the shapes that begin on it. */
export const playedSections = (
  { bars, stays }: Timeline,
  placements: readonly Placement[],
): readonly PlayedSection[] => {
  const sections: { label: string | null; bars: PlayedBar[] }[] = [];
  const staysIn = inTurn(stays);
  const placementsIn = inTurn(placements);
  for (const bar of bars) {
    const played = { bar, chords: chordsOf(bar, staysIn(bar), placementsIn(bar)) };
    const section = sections.at(-1);
    if (section && !bar.startsSection) section.bars.push(played);
    else sections.push({ label: bar.section, bars: [played] });
  }
  return sections;
};
