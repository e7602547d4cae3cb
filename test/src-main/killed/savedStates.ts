import { newSongSettings, type SongSettings } from "../../../src-shared/settings.ts";

/** A small generator of numbers from 0 to 1, so that a run can be had again: mulberry32, public domain. */
export const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
};

/** The title that a song of the test keeps through all its states. */
export const titleOf = (song: number): string => `Gate ${song}`;

const chords = ["G", "C", "D", "Em", "Am", "Bm"] as const;

/** A song's text in its state `count`: from a few bytes to more than a disk writes at once. */
export const textOf = (song: number, count: number): string => {
  const random = seeded(song * 100_003 + count);
  const lines = Math.floor(random() * random() * 250);
  const bars = Array.from({ length: lines }, () => {
    const line = Array.from({ length: 12 }, () => chords[Math.floor(random() * chords.length)]);
    return `| ${line.join(" | ")} |`;
  });
  return [`Title: ${titleOf(song)}`, ...bars, `# état ${count}`, ""].join("\n");
};

/** The settings that belong to that text and to no other of the last thousand. */
export const settingsOf = (count: number): SongSettings => ({
  ...newSongSettings,
  playTempo: 15 + (count % 300),
  countInBars: count % 2 === 0 ? 1 : 2,
  loop: { firstBar: count % 7, lastBar: count },
});
