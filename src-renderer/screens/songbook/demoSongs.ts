import { readChart } from "../../../src-shared/chart/readChart.ts";
import type { Song } from "../../../src-shared/chart/song.ts";
import { type DemoSong, demoSongTable } from "../../../src-shared/demo/demoSongTable.ts";

/** A demo song, and what its chart says. */
export type Demo = DemoSong & { readonly song: Song };

/** The demo songs, in the order in which they are offered. */
export const demoSongs: readonly Demo[] = demoSongTable.map((demo) => ({
  ...demo,
  song: readChart(demo.text).value,
}));
