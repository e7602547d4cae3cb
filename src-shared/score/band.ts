import * as v from "valibot";

/** How the band plays a song. */
export type Feel = {
  /** From 0, even eighths, to 1, bouncing: the off-beat eighth falls on the third triplet. */
  readonly bounce: number;
  /** From 0, as written, to 1, as loose as good players are; the same on every run. */
  readonly human: number;
  /** Sections differ in loudness. */
  readonly dynamics: boolean;
  /** The bass walks up or down into the next root. */
  readonly walkUps: boolean;
  /** The last bar of a section leads into the next one. */
  readonly fills: boolean;
};

/** Who is heard when practising. */
export type PracticeMix = "all" | "without-banjo" | "bass-and-click" | "banjo-only";

/** How a song is practised. */
export type Practice = {
  readonly mix: PracticeMix;
  /** Everyone drops out for `rest` bars after each `play` bars; null never. */
  readonly silentBars: { readonly play: number; readonly rest: number } | null;
  /** A bar of clicks before each round of a loop. */
  readonly countInEachRound: boolean;
};

/** All practice mixes, the fullest first. */
export const practiceMixes: readonly PracticeMix[] = [
  "all",
  "without-banjo",
  "bass-and-click",
  "banjo-only",
];

const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const bars = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(64));

/** Checks a feel as it comes from disk or over the wire. */
export const feelSchema: v.GenericSchema<unknown, Feel> = v.object({
  bounce: share,
  human: share,
  dynamics: v.boolean(),
  walkUps: v.boolean(),
  fills: v.boolean(),
});

/** Checks a way to practise as it comes from disk or over the wire. */
export const practiceSchema: v.GenericSchema<unknown, Practice> = v.object({
  mix: v.picklist(practiceMixes),
  silentBars: v.nullable(v.object({ play: bars, rest: bars })),
  countInEachRound: v.boolean(),
});

/** A band that pushes a little: even eighths, walk-ups and fills. */
export const usualFeel: Feel = {
  bounce: 0,
  human: 0.3,
  dynamics: true,
  walkUps: true,
  fills: true,
};

/** Everyone plays, all the time. */
export const usualPractice: Practice = { mix: "all", silentBars: null, countInEachRound: false };
