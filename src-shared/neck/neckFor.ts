import { type Fret, fret } from "../units.ts";
import { USUAL_SCALE_LENGTH } from "./fretDistance.ts";
import type { Neck, Tuning } from "./neck.ts";

/** Frets on a usual neck. Common practice, no published source. */
export const USUAL_LAST_FRET: Fret = fret(22);

/** A usual instrument, tuned and capoed as a song asks. */
export const neckFor = (tuning: Tuning, capo: Fret): Neck => ({
  tuning,
  capo,
  scaleLength: USUAL_SCALE_LENGTH,
  lastFret: USUAL_LAST_FRET,
});
