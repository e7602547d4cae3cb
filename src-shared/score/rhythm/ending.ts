import { midi, type Tick, tick } from "../../units.ts";
import type { Hit } from "../score.ts";
import type { BandBar } from "./bandBar.ts";
import { bassRoot, chopPitches, strumPitches } from "./chordPitches.ts";

/** The last stroke is a little louder than the section. The figure is our own. */
const FINAL = 1.1;

const together = (here: BandBar, at: Tick): readonly Hit[] => {
  const chord = here.pieces.at(-1)?.chord;
  if (!chord) {
    return [];
  }
  const root = bassRoot(chord);
  const shared = {
    tick: at,
    ticks: tick(here.bar.start + here.bar.length - at),
    accent: true,
    level: here.level * FINAL,
  };
  return [
    { ...shared, part: "bass", pitches: [root] },
    { ...shared, part: "guitar", pitches: [midi(root + 12), ...strumPitches(chord)] },
    { ...shared, part: "chop", pitches: chopPitches(chord) },
  ];
};

/**
 * The hits of a song with its end: all parts strike the last chord together and hold it to the bar's
 * end, and nothing else is struck after. Without an ending in the last bar they are as given. Common
 * practice, no published source.
 */
export const withEnding = (hits: readonly Hit[], bars: readonly BandBar[]): readonly Hit[] => {
  const last = bars.at(-1);
  const at = last?.ending;
  if (!last || at === null || at === undefined) {
    return hits;
  }
  const before = hits
    .filter((hit) => hit.tick < at)
    .map((hit) => ({ ...hit, ticks: tick(Math.min(hit.ticks, at - hit.tick)) }));
  return [...before, ...together(last, at)];
};
