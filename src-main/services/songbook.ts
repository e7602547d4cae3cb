import { mkdir, open, readdir, rename, rm, rmdir } from "node:fs/promises";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import type { Answer, SongSummary, SongToWrite, StoredSong } from "../../src-shared/host.ts";
import {
  newSongSettings,
  type SongSettings,
  songSettingsSchema,
} from "../../src-shared/settings.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed, given } from "./answer.ts";
import { noSuchSong, readChartFile } from "./chartFile.ts";
import { type Disk, isMissing, stamp } from "./disk.ts";
import { isSystemError } from "./diskProblem.ts";
import { bareNameFrom, isBareName, pathIn } from "./fileName.ts";
import { readJson, writeJson } from "./jsonFile.ts";
import { makeSummaries } from "./summaries.ts";

const CHART = ".txt";
const SETTINGS = ".json";
const REMOVED = ".removed";

/** A folder of charts: `<id>.txt` is the chart as typed, `<id>.json` its settings. */
export type Songbook = {
  readonly list: () => Promise<Answer<readonly SongSummary[]>>;
  readonly read: (id: string) => Promise<Answer<StoredSong>>;
  readonly create: (
    title: string,
    text: string,
    settings: SongSettings,
  ) => Promise<Answer<StoredSong>>;
  readonly write: (song: SongToWrite) => Promise<Answer<null>>;
  readonly remove: (id: string) => Promise<Answer<{ readonly ticket: string }>>;
  /** Under the name it had, unless another is wished for; with a number where that is taken. */
  readonly restore: (ticket: string, wish?: string) => Promise<Answer<StoredSong>>;
};

const byTitle = new Intl.Collator(undefined, { numeric: true, sensitivity: "base" });

/** Whether two texts differ in nothing but the kind of their line breaks. */
const sameText = (one: string, other: string): boolean =>
  one.replaceAll(/\r\n?/gu, "\n") === other.replaceAll(/\r\n?/gu, "\n");

const CHANGED_TRY = "Another window or another program has saved it since you opened it here.";

/** Whether settings are, value for value, among others. */
const isOneOf = (settings: SongSettings, others: readonly SongSettings[]): boolean =>
  others.some((other) => isDeepStrictEqual(other, settings));

/** Names in a folder that end so, without the ending; none where there is no folder. */
const namesIn = async (folder: string, ending: string): Promise<readonly string[]> => {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    return entries
      .filter((entry) => !entry.isDirectory() && entry.name.endsWith(ending))
      .map((entry) => entry.name.slice(0, -ending.length))
      .filter(isBareName);
  } catch (error) {
    if (isMissing(error)) {
      return [];
    }
    throw error;
  }
};

/** A name with a number after it, cut where the two together would be too long. */
const numbered = (name: string, count: number): string => {
  let start = name;
  while (!isBareName(`${start}-${count}`)) {
    start = start.slice(0, -1);
  }
  return `${start}-${count}`;
};

/** Moves a file; false where there is none. */
const moveIfThere = async (from: string, to: string): Promise<boolean> => {
  try {
    await rename(from, to);
    return true;
  } catch (error) {
    if (isMissing(error)) {
      return false;
    }
    throw error;
  }
};

/** Keeps a songbook in a folder, which is made when the first song is. */
export const makeSongbook = (folder: string, disk: Disk): Songbook => {
  const chartPath = (id: string): string => join(folder, `${id}${CHART}`);
  const settingsPath = (id: string): string => join(folder, `${id}${SETTINGS}`);
  const readSettings = (id: string): Promise<SongSettings> =>
    readJson(disk, settingsPath(id), songSettingsSchema, newSongSettings);

  const summaryOf = makeSummaries(chartPath);

  /** Takes a name that nothing else has, by making its empty chart file. */
  const claim = async (wish: string): Promise<string> => {
    await mkdir(folder, { recursive: true });
    for (let count = 1; ; count += 1) {
      const id = count === 1 ? wish : numbered(wish, count);
      try {
        await (await open(chartPath(id), "wx")).close();
        return id;
      } catch (error) {
        if (!(isSystemError(error) && error.code === "EEXIST")) {
          throw error;
        }
      }
    }
  };

  /** Gives a claimed name back when what was to stand under it could not be put there. */
  const underClaim = async (wish: string, fill: (id: string) => Promise<void>): Promise<string> => {
    const id = await claim(wish);
    try {
      await fill(id);
      return id;
    } catch (error) {
      await rm(chartPath(id), { force: true });
      throw error;
    }
  };

  const read = async (id: string): Promise<Answer<StoredSong>> => {
    if (!isBareName(id)) {
      return noSuchSong();
    }
    const chart = await readChartFile(chartPath(id));
    return chart.ok
      ? given({ id, text: chart.value.text, settings: await readSettings(id) })
      : chart;
  };

  return {
    read,

    list: async () => {
      const songs: SongSummary[] = [];
      for (const id of await namesIn(folder, CHART)) {
        const summary = await summaryOf(id);
        if (summary !== null) {
          songs.push(summary);
        }
      }
      return given(
        songs.toSorted((a, b) => byTitle.compare(a.title, b.title) || byTitle.compare(a.id, b.id)),
      );
    },

    create: async (title, text, settings) => {
      const id = await underClaim(bareNameFrom(title), async (claimed) => {
        await disk.writeText(chartPath(claimed), text);
        await writeJson(disk, settingsPath(claimed), settings);
      });
      return given({ id, text, settings });
    },

    write: async ({ id, text, settings, before, settingsBefore }) => {
      const path = pathIn(folder, id, CHART);
      const now = path === null ? noSuchSong() : await readChartFile(path);
      if (path === null || !now.ok) {
        return now.ok ? noSuchSong() : now;
      }
      const same = sameText(now.value.text, text);
      if (!same && !sameText(now.value.text, before)) {
        return failed("changed", "This song was changed elsewhere.", CHANGED_TRY);
      }
      if (settingsBefore && !isOneOf(await readSettings(id), [settingsBefore, settings])) {
        return failed("changed", words.shelf.settingsChanged, CHANGED_TRY);
      }
      if (!same) {
        await disk.writeText(path, text);
      }
      await writeJson(disk, settingsPath(id), settings);
      return given(null);
    },

    remove: async (id) => {
      if (!isBareName(id)) {
        return noSuchSong();
      }
      const ticket = stamp();
      const place = join(folder, REMOVED, ticket);
      await mkdir(place, { recursive: true });
      if (!(await moveIfThere(chartPath(id), join(place, `${id}${CHART}`)))) {
        await rmdir(place);
        return noSuchSong();
      }
      try {
        await moveIfThere(settingsPath(id), join(place, `${id}${SETTINGS}`));
      } catch (error) {
        await rename(join(place, `${id}${CHART}`), chartPath(id));
        throw error;
      }
      return given({ ticket });
    },

    restore: async (ticket, wish) => {
      const place = pathIn(join(folder, REMOVED), ticket, "");
      const [name] = place === null ? [] : await namesIn(place, CHART);
      if (place === null || name === undefined) {
        return failed(
          "not-found",
          "There is nothing left to bring back.",
          "It may have been brought back already; look in the songbook.",
        );
      }
      const keptSettings = join(place, `${name}${SETTINGS}`);
      const id = await underClaim(wish ?? name, async (claimed) => {
        // The chart last: what fails before it leaves the ticket good.
        const moved = await moveIfThere(keptSettings, settingsPath(claimed));
        try {
          await rename(join(place, `${name}${CHART}`), chartPath(claimed));
        } catch (error) {
          if (moved) {
            await rename(settingsPath(claimed), keptSettings);
          }
          throw error;
        }
      });
      await rm(place, { recursive: true });
      return read(id);
    },
  };
};
