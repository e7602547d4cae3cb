import type { Refusal } from "../harmony/refusal.ts";

/** A song found in a file: its chart, what was read, and what was left, each in words. */
export type FoundSong = {
  readonly ok: true;
  readonly title: string;
  /** Canonical chart text. */
  readonly chart: string;
  readonly read: readonly string[];
  readonly left: readonly string[];
};

/** A song of a file, or why it cannot be had; it then has at least its title. */
export type FoundTune = FoundSong | (Refusal & { readonly title: string });

/** What a file gives: at least one tune, or a refusal of the whole. */
export type Importing = { readonly ok: true; readonly tunes: readonly FoundTune[] } | Refusal;

/** Hears after each tune of a file how many are read, of how many. */
export type OnTune = (read: number, of: number) => void;

/** No file is longer than this, packed or unpacked, in bytes. */
export const MAX_IMPORT_BYTES: number = 8 * 1024 * 1024;
