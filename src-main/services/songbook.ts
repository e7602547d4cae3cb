import { access, copyFile, mkdir, open, readdir, rename, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import type {
  Answer,
  KeptVersion,
  SongSummary,
  SongToWrite,
  SongVersionFile,
  StoredSong,
} from "../../src-shared/host.ts";
import type { SongSettings } from "../../src-shared/settings.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed, given } from "./answer.ts";
import { noSuchSong } from "./chartFile.ts";
import { type Disk, isMissing, stamp } from "./disk.ts";
import { isSystemError } from "./diskProblem.ts";
import { makeEarlierVersions, VERSIONS } from "./earlierVersions.ts";
import { bareNameFrom, isBareName, pathIn } from "./fileName.ts";
import { makeLastSavedNote } from "./lastSaved.ts";
import { type Remark, remarkTo } from "./remarks.ts";
import { CHART, makeSongFiles, SETTINGS, sameText } from "./songFiles.ts";
import { makeSummaries } from "./summaries.ts";
import { sweep } from "./sweep.ts";

const REMOVED = ".removed";
/** Where a removed song's earlier versions lie beside it. */
const KEPT_VERSIONS = "versions";

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
  readonly listVersions: (id: string) => Promise<Answer<readonly KeptVersion[]>>;
  readonly readVersion: (id: string, version: string) => Promise<Answer<SongVersionFile>>;
  /** Sets a damaged chart aside; the last good version takes its place. */
  readonly mend: (id: string) => Promise<Answer<StoredSong>>;
};

const byTitle = new Intl.Collator(undefined, { numeric: true, sensitivity: "base" });

const CHANGED_TRY = words.disk.changedTry;

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

/** Copies a file; false where there is none. */
const copyIfThere = async (from: string, to: string): Promise<boolean> => {
  try {
    await copyFile(from, to);
    return true;
  } catch (error) {
    if (isMissing(error)) {
      return false;
    }
    throw error;
  }
};

/** Longer than any song is being made. */
const CLAIM_MS = 10_000;

const isOld = async (path: string): Promise<boolean> =>
  Date.now() - (await stat(path)).mtimeMs > CLAIM_MS;

const isThere = async (path: string): Promise<boolean> => {
  try {
    await access(path);
    return true;
  } catch (error) {
    if (isMissing(error)) {
      return false;
    }
    throw error;
  }
};

/** Keeps a songbook in a folder, which is made when the first song is. */
export const makeSongbook = (
  folder: string,
  disk: Disk,
  remark: Remark = remarkTo(disk.log),
): Songbook => {
  const versions = makeEarlierVersions(folder, disk);
  const lastSaved = makeLastSavedNote(folder, disk);
  const files = makeSongFiles(folder, disk, lastSaved, versions, remark);
  const { chartPath, settingsPath } = files;
  const versionsFolder = (id: string): string => join(folder, VERSIONS, id);
  let isSwept = false;

  const summaryOf = makeSummaries(chartPath);

  /**
   * Takes a name that nothing else has, by making its empty file of settings: a song is seen only
   * when its chart is there, and that comes last and whole. Settings without a chart are another
   * claim, or what a program that was killed has left.
   */
  const claim = async (wish: string): Promise<string> => {
    await mkdir(folder, { recursive: true });
    for (let count = 1; ; count += 1) {
      const id = count === 1 ? wish : numbered(wish, count);
      try {
        await (await open(settingsPath(id), "wx")).close();
        if (!(await isThere(chartPath(id)))) {
          return id;
        }
        await rm(settingsPath(id));
      } catch (error) {
        if (!(isSystemError(error) && error.code === "EEXIST")) {
          throw error;
        }
        if (!(await isThere(chartPath(id))) && (await isOld(settingsPath(id)))) {
          return id;
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
      await rm(settingsPath(id), { force: true });
      await lastSaved.forget(id);
      throw error;
    }
  };

  const read = async (id: string): Promise<Answer<StoredSong>> => {
    const song = isBareName(id) ? await files.read(id) : noSuchSong();
    return song.ok ? given({ id, text: song.value.text, settings: song.value.settings }) : song;
  };

  return {
    read,

    list: async () => {
      if (!isSwept) {
        isSwept = true;
        await sweep(folder, disk, Date.now());
      }
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
      const id = await underClaim(bareNameFrom(title), (claimed) =>
        files.begin(claimed, { text, settings }),
      );
      return given({ id, text, settings });
    },

    write: async ({ id, text, settings, before, settingsBefore }) => {
      const now = isBareName(id) ? await files.read(id) : noSuchSong();
      if (!now.ok) {
        return now;
      }
      if (!sameText(now.value.text, text) && !sameText(now.value.text, before)) {
        return failed("changed", words.disk.changed, CHANGED_TRY);
      }
      if (settingsBefore && !isOneOf(now.value.settings, [settingsBefore, settings])) {
        return failed("changed", words.shelf.settingsChanged, CHANGED_TRY);
      }
      await files.write(id, now.value, { text, settings });
      return given(null);
    },

    remove: async (id) => {
      if (!isBareName(id)) {
        return noSuchSong();
      }
      const ticket = stamp();
      const place = join(folder, REMOVED, ticket);
      const chart = join(place, `${id}${CHART}`);
      await mkdir(place, { recursive: true });
      // Copied, not moved: wherever this is broken off, the song is here or there with its settings.
      const hasSettings = await copyIfThere(settingsPath(id), join(place, `${id}${SETTINGS}`));
      if (!(await moveIfThere(chartPath(id), chart))) {
        await rm(place, { recursive: true });
        return noSuchSong();
      }
      try {
        await moveIfThere(versionsFolder(id), join(place, KEPT_VERSIONS));
        if (hasSettings) {
          await rm(settingsPath(id));
        }
      } catch (error) {
        await moveIfThere(join(place, KEPT_VERSIONS), versionsFolder(id));
        await rename(chart, chartPath(id));
        throw error;
      }
      return given({ ticket });
    },

    restore: async (ticket, wish) => {
      const place = pathIn(join(folder, REMOVED), ticket, "");
      const [name] = place === null ? [] : await namesIn(place, CHART);
      if (place === null || name === undefined) {
        return failed("not-found", words.disk.nothingBack, words.disk.nothingBackTry);
      }
      const keptVersions = join(place, KEPT_VERSIONS);
      const id = await underClaim(wish ?? name, async (claimed) => {
        if (!(await copyIfThere(join(place, `${name}${SETTINGS}`), settingsPath(claimed)))) {
          await rm(settingsPath(claimed));
        }
        // What lies there is of a song that is gone.
        await rm(versionsFolder(claimed), { recursive: true, force: true });
        await mkdir(join(folder, VERSIONS), { recursive: true });
        const moved = await moveIfThere(keptVersions, versionsFolder(claimed));
        try {
          // The chart last: what fails before it leaves the ticket good.
          await rename(join(place, `${name}${CHART}`), chartPath(claimed));
        } catch (error) {
          if (moved) {
            await rename(versionsFolder(claimed), keptVersions);
          }
          throw error;
        }
      });
      await rm(place, { recursive: true });
      return read(id);
    },

    listVersions: async (id) => (isBareName(id) ? given(await versions.list(id)) : noSuchSong()),

    readVersion: async (id, version) => {
      const found = isBareName(id) ? await versions.read(id, version) : null;
      const { noSuchVersion, chooseAnother } = words.keeping;
      return found ? given(found) : failed("not-found", noSuchVersion, chooseAnother);
    },

    mend: async (id) => {
      const mended = isBareName(id) ? await files.mend(id) : noSuchSong();
      return mended.ok ? read(id) : mended;
    },
  };
};
