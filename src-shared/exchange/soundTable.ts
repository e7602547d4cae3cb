// General MIDI 1 programs, counted from 1 as the standard's list counts them: 106 Banjo, 33 Acoustic
// Bass; 26 Acoustic Guitar (steel), also for the chop, as the list has no mandolin (common practice).
// Percussion keys 76 and 77: High and Low Wood Block. From memory but for the banjo; tested against a
// library's list. Channels are ours: one for each banjo string, so that a string bends alone.
import type { StringNumber } from "../neck/neck.ts";
import type { Part } from "../score/score.ts";

/** One part's place in a MIDI file. */
export type MidiVoice = {
  readonly name: string;
  /** 0 to 15, as on the wire; 9 is percussion. */
  readonly channel: number;
  /** 1 to 128; null on the percussion channel. */
  readonly program: number | null;
};

/** General MIDI's number of the banjo, counted from 1. */
export const BANJO_PROGRAM = 106;

/** The channel that percussion sounds on, counted from 0. */
export const PERCUSSION_CHANNEL = 9;

/** Percussion keys of the click: on a bar's first beat, and on the others. */
export const clickKeys: { readonly accent: number; readonly plain: number } = {
  accent: 76,
  plain: 77,
};

/**
 * The channel (counted from 0) that a banjo string sounds on.
 * @example channelOfString(5) // => 4
 */
export const channelOfString = (string: StringNumber): number => string - 1;

/** The band's parts, in the order of their tracks. */
export const bandVoices: readonly (MidiVoice & { readonly part: Part })[] = [
  { part: "bass", name: "Bass", channel: 5, program: 33 },
  { part: "guitar", name: "Guitar", channel: 6, program: 26 },
  { part: "chop", name: "Chop", channel: 7, program: 26 },
  { part: "click", name: "Click", channel: PERCUSSION_CHANNEL, program: null },
];
