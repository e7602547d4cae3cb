import { TICKS_PER_EIGHTH, tick } from "../units.ts";
import { playOrder } from "./playOrder.ts";
import { eighthsIn } from "./pulse.ts";
import type { Song, TimedBar, TimedStay, Timeline } from "./song.ts";

/**
 * Plays a song out: repeats, endings and form become one straight row of bars in ticks, and
 * neighbours with the same chord become one stay, over bar lines too. Ends after MAX_BARS bars.
 */
export const unfold = (song: Song): Timeline => {
  const length = tick(eighthsIn(song.meter) * TICKS_PER_EIGHTH);
  const bars: TimedBar[] = [];
  const stays: TimedStay[] = [];
  for (const [index, played] of playOrder(song).bars.entries()) {
    const start = tick(index * length);
    const { section, written, startsSection } = played;
    bars.push({ index, start, length, section: section.label, startsSection, written });
    let at: number = start;
    for (const stay of section.bars[played.bar]?.stays ?? []) {
      const lasts = stay.eighths * TICKS_PER_EIGHTH;
      const last = stays.at(-1);
      if (last !== undefined && last.chord?.name === stay.chord?.name) {
        stays[stays.length - 1] = { ...last, length: tick(last.length + lasts) };
      } else {
        stays.push({ chord: stay.chord, start: tick(at), length: tick(lasts), bar: index });
      }
      at += lasts;
    }
  }
  return { meter: song.meter, bars, stays, length: tick(bars.length * length) };
};
