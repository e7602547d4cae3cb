import type { Bar, Section, Song, Stay, Timeline } from "../chart/song.ts";
import { chordName } from "../harmony/chord.ts";
import { TICKS_PER_EIGHTH } from "../units.ts";

const plain: Omit<Bar, "stays"> = {
  opensRepeat: false,
  plays: 1,
  ending: null,
  endsEnding: false,
};

/**
 * A song written straight through as it is played: no repeats, no form, chords by letter, and a
 * chord that goes on over a bar line written again. Whole measures of the files that go out.
 */
export const playedOut = (song: Song, timeline: Timeline): Song => {
  const sections: { readonly label: string | null; readonly bars: Bar[] }[] = [];
  let current = 0;
  for (const bar of timeline.bars) {
    const end = bar.start + bar.length;
    const stays: Stay[] = [];
    for (let at: number = bar.start; at < end; ) {
      while ((timeline.stays[current + 1]?.start ?? timeline.length) <= at) {
        current += 1;
      }
      const stay = timeline.stays[current];
      if (stay === undefined) {
        throw new Error(`bar ${bar.index} has no chord at tick ${at}`);
      }
      const until = Math.min(end, stay.start + stay.length);
      stays.push({
        symbol: stay.chord === null ? "N.C." : chordName(stay.chord),
        chord: stay.chord,
        eighths: (until - at) / TICKS_PER_EIGHTH,
      });
      at = until;
    }
    if (bar.startsSection || sections.length === 0) {
      sections.push({ label: bar.section, bars: [] });
    }
    sections.at(-1)?.bars.push({ ...plain, stays });
  }
  const played: readonly Section[] = sections;
  return { ...song, form: null, sections: played };
};
