import { TICKS_PER_EIGHTH, tick } from "../../units.ts";
import type { Hit } from "../score.ts";
import type { BandBar } from "./bandBar.ts";
import { chopPitches } from "./chordPitches.ts";
import { chopPlaces, swell } from "./fills.ts";

/** A chop is damped at once. */
const DAMPED = TICKS_PER_EIGHTH / 2;

/**
 * The chop: the chord of the moment, short and damped, between the bass's beats; more strokes, each
 * louder than the one before, in a bar that leads into a new section. Silent in N.C. Common practice,
 * no published source.
 */
export const chop = (bars: readonly BandBar[]): readonly Hit[] =>
  bars.flatMap((here) => {
    const places = chopPlaces(here);
    return places.flatMap((place, index): readonly Hit[] => {
      const at = tick(here.bar.start + place);
      const chord = here.pieces.find((piece) => piece.start <= at && at < piece.end)?.chord;
      if (!chord) {
        return [];
      }
      const level = here.level * swell(here.fills, index, places.length);
      const ticks = tick(DAMPED);
      return [{ part: "chop", tick: at, ticks, pitches: chopPitches(chord), accent: false, level }];
    });
  });
