import type { Dirent } from "node:fs";
import { readdir, readFile, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { readChart } from "../../src-shared/chart/readChart.ts";
import type { Answer, RemovedSong } from "../../src-shared/host.ts";
import { given } from "./answer.ts";
import { MAX_CHART_BYTES } from "./chartFile.ts";
import { isMissing } from "./disk.ts";
import { isBareName, pathIn } from "./fileName.ts";

/** The shelf of the songs that are out of the songbook. */
export type RemovedSongs = {
  readonly list: () => Promise<Answer<readonly RemovedSong[]>>;
  /** Takes songs away for good; one that is not there is gone already. */
  readonly erase: (tickets: readonly string[]) => Promise<Answer<null>>;
};

const CHART = ".txt";

const entriesOf = async (folder: string): Promise<readonly Dirent[]> => {
  try {
    return await readdir(folder, { withFileTypes: true });
  } catch (error) {
    if (isMissing(error)) {
      return [];
    }
    throw error;
  }
};

/** Looks after the folders of removed songs: one for each ticket, with the song's files in it. */
export const makeRemovedSongs = (folder: string): RemovedSongs => {
  const songIn = async (ticket: string): Promise<RemovedSong | null> => {
    const place = join(folder, ticket);
    const chart = (await entriesOf(place)).find(({ name }) => name.endsWith(CHART))?.name;
    if (chart === undefined) {
      return null;
    }
    const path = join(place, chart);
    const { ctimeMs, size } = await stat(path);
    const id = chart.slice(0, -CHART.length);
    const title = size > MAX_CHART_BYTES ? "" : readChart(await readFile(path, "utf8")).value.title;
    return { ticket, title: title || id, removedMs: ctimeMs };
  };

  return {
    list: async () => {
      const songs: RemovedSong[] = [];
      const places = (await entriesOf(folder)).filter((entry) => entry.isDirectory());
      for (const { name: ticket } of places.filter(({ name }) => isBareName(name))) {
        const song = await songIn(ticket);
        if (song !== null) {
          songs.push(song);
        }
      }
      return given(songs.toSorted((one, other) => other.removedMs - one.removedMs));
    },

    erase: async (tickets) => {
      for (const ticket of tickets) {
        const place = pathIn(folder, ticket, "");
        if (place !== null) {
          await rm(place, { recursive: true, force: true });
        }
      }
      return given(null);
    },
  };
};
