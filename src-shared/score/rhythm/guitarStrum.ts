import { midi, TICKS_PER_EIGHTH, TICKS_PER_QUARTER, type Tick, tick } from "../../units.ts";
import type { Hit } from "../score.ts";
import type { BandBar } from "./bandBar.ts";
import { strumPitches } from "./chordPitches.ts";

/** Levels of the three strokes beside the band's own: the guitar keeps under bass and chop. */
const BASS_NOTE = 0.8;
const STRUM = 0.65;
const BACK = 0.35;
/** Strings that a light stroke back catches: the highest ones. */
const BACK_STRINGS = 3;
const OCTAVE = 12;

/** The bass's own notes an octave up, where a guitar's low strings lie. */
const lowNotes = (bass: readonly Hit[]): readonly Hit[] =>
  bass.map((hit) => ({
    ...hit,
    part: "guitar",
    pitches: hit.pitches.map((pitch) => midi(pitch + OCTAVE)),
    level: hit.level * BASS_NOTE,
  }));

const strums = (here: BandBar, taken: ReadonlySet<number>): readonly Hit[] => {
  const { bar, groove, pieces, level } = here;
  const strum = (place: Tick, back: boolean): readonly Hit[] => {
    const at = tick(bar.start + place);
    const piece = pieces.find((each) => each.start <= at && at < each.end);
    if (!piece?.chord || taken.has(at)) {
      return [];
    }
    const all = strumPitches(piece.chord);
    return [
      {
        part: "guitar",
        tick: at,
        ticks: tick(Math.min(back ? TICKS_PER_EIGHTH : TICKS_PER_QUARTER, piece.end - at)),
        pitches: back ? all.slice(-BACK_STRINGS) : all,
        accent: false,
        level: level * (back ? BACK : STRUM),
      },
    ];
  };
  return [
    ...groove.chop.flatMap((place) => strum(place, false)),
    ...groove.back.flatMap((place) => strum(place, true)),
  ];
};

/**
 * The guitar: the bass's note on a low string, then a light strum of the chord where the chop plays
 * and a lighter one back on the eighth after. Silent in N.C. Common practice, no published source.
 */
export const guitarStrum = (bars: readonly BandBar[], bass: readonly Hit[]): readonly Hit[] => {
  const low = lowNotes(bass);
  const taken = new Set(low.map((hit) => hit.tick));
  return [...low, ...bars.flatMap((here) => strums(here, taken))];
};
