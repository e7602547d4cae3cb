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
 * Why silent bars are never heard: the round, of so many bars, is over before the first one. "" where
 * they are heard.
 * @example sayNoSilence({ play: 4, rest: 2 }, 4) // => "This round has 4 bars: it starts over before anyone drops out."
 */
export const sayNoSilence = (silences: Practice["silentBars"], roundBars: number): string =>
  silences && silences.play >= roundBars
    ? `This round has ${roundBars} bar${roundBars === 1 ? "" : "s"}: it starts over before anyone drops out.`
    : "";
