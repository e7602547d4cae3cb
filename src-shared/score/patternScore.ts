import type { TimedBar, Timeline } from "../chart/song.ts";
import type { Neck } from "../neck/neck.ts";
import { eighthsOfMeter, meterOfPattern } from "../roll/beats.ts";
import { fifthBelongs } from "../roll/fifthBelongs.ts";
import type { Pattern } from "../roll/pattern.ts";
import { onThird, type Played } from "../roll/played.ts";
import { exitsOf } from "../route/change.ts";
import type { Placement, Route } from "../route/route.ts";
import type { Slot } from "../route/slot.ts";
import { millimetres, milliseconds, TICKS_PER_EIGHTH, tick } from "../units.ts";
import { arrange } from "./arrange.ts";
import { withBand } from "./rhythm/rhythmSection.ts";
import type { Score } from "./score.ts";

const barsOf = (pattern: Pattern): readonly TimedBar[] => {
  const measure = eighthsOfMeter[pattern.meter];
  const { length } = pattern.strokes;
  return Array.from({ length: Math.ceil(length / measure) }, (_, index) => ({
    index,
    start: tick(index * measure * TICKS_PER_EIGHTH),
    length: tick(Math.min(measure, length - index * measure) * TICKS_PER_EIGHTH),
    section: null,
    startsSection: index === 0,
    written: index,
  }));
};

/** What a pattern is tried on: a chord and how it is held. */
export type Trial = Pick<Placement, "chord" | "voicing"> & { readonly neck: Neck };

/**
 * A pattern by itself on one chord, once through, with the band, to go round and round: its tempo counts
 * beats of the pattern's meter. Where the open fifth string does not belong to the chord, the thumb strikes string 3.
 */
export const patternScore = (pattern: Pattern, { chord, voicing, neck }: Trial): Score => {
  const length = tick(pattern.strokes.length * TICKS_PER_EIGHTH);
  const start = tick(0);
  const timeline: Timeline = {
    meter: meterOfPattern(pattern.meter),
    bars: barsOf(pattern),
    stays: [{ chord, start, length, bar: 0 }],
    length,
  };
  const strokes = fifthBelongs(chord, neck) ? pattern.strokes : pattern.strokes.map(onThird);
  const played: Played = {
    manner: { style: "forward", density: "full", soft: false },
    pieces: [{ ...pattern, strokes }],
    strokes,
    cover: null,
    remarks: [],
  };
  const place = { stay: 0, bar: 0, start, length, chord };
  const slot: Slot = { ...place, written: 0, eighth: 0, time: 0, played, exits: exitsOf(played) };
  const route: Route = {
    aim: "ease",
    placements: [{ ...place, index: 0, voicing }],
    legs: [],
    travel: millimetres(0),
    costs: [],
  };
  // Nothing moves, so that it does not matter how long an eighth lasts.
  const banjo = arrange(timeline, neck, route, [slot], milliseconds(1));
  return withBand(banjo, timeline, {
    key: { tonic: chord.root, mode: "major" },
    feel: { dynamics: false, walkUps: false, fills: false },
    goesRound: true,
  });
};
