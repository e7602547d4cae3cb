import type { PracticeMix } from "../../src-shared/score/band.ts";

/** What a player wants in a sound file. */
export type WavChoice = {
  readonly range: "song" | "loop";
  /** Who plays; null as they do now. */
  readonly mix: PracticeMix | null;
  readonly bits: 16 | 24;
  readonly sampleRate: 44_100 | 48_000;
  /** Clicks before the first note, as many bars as before playing, one at least. */
  readonly countIn: boolean;
};

/** What most programs and players take, and what was last heard. */
export const usualWavChoice: WavChoice = {
  range: "song",
  mix: null,
  bits: 16,
  sampleRate: 44_100,
  countIn: false,
};

/** How far the file is. */
export type WavWork =
  | { readonly kind: "none" }
  /** `share` from 0 to 1. */
  | { readonly kind: "working"; readonly share: number }
  | { readonly kind: "saved"; readonly fileName: string }
  /** What is wrong and what to do, in words. */
  | { readonly kind: "failed"; readonly says: string };

/** For the dialog: who may play, by name. */
export type WavMix = { readonly mix: PracticeMix | null; readonly name: string };
