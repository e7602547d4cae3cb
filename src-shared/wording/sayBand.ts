import type { Practice, PracticeMix } from "../score/band.ts";
import { words } from "../wordTable.ts";

/**
 * A practice mix in words.
 * @example sayPracticeMix("without-banjo").name // => "You are the banjo"
 */
export const sayPracticeMix = (
  mix: PracticeMix,
): { readonly name: string; readonly says: string } => words.band.mixes[mix];

/**
 * Why silent bars are never heard: the song, of so many bars, is over before the first one. "" where
 * they are heard, as in anything that starts over (null).
 * @example sayNoSilence({ play: 4, rest: 2 }, 4) // => "The song has 4 bars: it is over before anyone drops out."
 */
export const sayNoSilence = (silences: Practice["silentBars"], songBars: number | null): string =>
  silences && songBars !== null && silences.play >= songBars ? words.band.noSilence(songBars) : "";
