import type { Meter } from "../chart/song.ts";
import { tick } from "../units.ts";
import type { Hit } from "./score.ts";
import { beatsPerBar, ticksPerBar, ticksPerBeat } from "./tempo.ts";

/**
 * The clicks of the bars before the start, one for each beat of the meter, at negative ticks: the
 * start itself is tick 0. The first beat of each bar is accented. No bars give no clicks.
 * @example countIn({ beats: 2, unit: 2 }, 1).map((hit) => hit.tick) // => [-1920, -960]
 */
export const countIn = (meter: Meter, bars: number): readonly Hit[] => {
  const beat = ticksPerBeat(meter);
  const beats = beatsPerBar(meter);
  return Array.from({ length: bars * beats }, (_, index) => ({
    part: "click",
    tick: tick(index * beat - bars * ticksPerBar(meter)),
    ticks: beat,
    pitches: [],
    accent: index % beats === 0,
    level: 1,
  }));
};
