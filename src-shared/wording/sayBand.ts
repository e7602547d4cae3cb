import type { Practice, PracticeMix } from "../score/band.ts";

const mixWords: Readonly<Record<PracticeMix, { readonly name: string; readonly says: string }>> = {
  all: { name: "Everyone", says: "The banjo plays with the band." },
  "without-banjo": { name: "You are the banjo", says: "The band plays; the banjo is yours." },
  "bass-and-click": { name: "Bass and click", says: "The bass, and a click on every beat." },
  "banjo-only": { name: "Banjo alone", says: "The banjo by itself." },
};

/**
 * A practice mix in words.
 * @example sayPracticeMix("without-banjo").name // => "You are the banjo"
 */
export const sayPracticeMix = (
  mix: PracticeMix,
): { readonly name: string; readonly says: string } => mixWords[mix];

/**
 * Why silent bars are never heard: the song, of so many bars, is over before the first one. "" where
 * they are heard, as in anything that starts over (null).
 * @example sayNoSilence({ play: 4, rest: 2 }, 4) // => "The song has 4 bars: it is over before anyone drops out."
 */
export const sayNoSilence = (silences: Practice["silentBars"], songBars: number | null): string =>
  silences && songBars !== null && silences.play >= songBars
    ? `The song has ${songBars} bar${songBars === 1 ? "" : "s"}: it is over before anyone drops out.`
    : "";
