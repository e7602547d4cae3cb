import { readKey } from "../harmony/readKey.ts";
import { inKey } from "./inKey.ts";
import type { Song } from "./song.ts";

/**
 * The song in the key that the settings ask for; null is its own key, and so is a text that is no
 * key.
 */
export const songToPlay = (written: Song, playKey: string | null): Song => {
  const asked = playKey === null ? null : readKey(playKey);
  return asked?.ok ? inKey(written, asked.key) : written;
};
