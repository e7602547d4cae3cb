import { constants } from "node:fs";
import { copyFile, open, stat } from "node:fs/promises";
import { join } from "node:path";
import type { Answer, SongVersionFile } from "../../src-shared/host.ts";
import {
  newSongSettings,
  type SongSettings,
  songSettingsSchema,
} from "../../src-shared/settings.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed, given } from "./answer.ts";
import { guessedText, readChartFile } from "./chartFile.ts";
import { type Disk, stamp } from "./disk.ts";
import type { EarlierVersions } from "./earlierVersions.ts";
import { readKept, writeJson } from "./jsonFile.ts";
import { digestOf, type LastSaved, type LastSavedNote } from "./lastSaved.ts";
import type { Remark } from "./remarks.ts";

/** What a chart's file is called after the song's id. */
export const CHART = ".txt";
/** What the file of its settings is called after the song's id. */
export const SETTINGS = ".json";

/** A song as its two files have it. */
export type SongOnDisk = SongVersionFile & {
  /** Whether there is a file of settings that can be read. */
  readonly hasSettings: boolean;
};

/** Whether two texts differ in nothing but the kind of their line breaks. */
export const sameText = (one: string, other: string): boolean =>
  one.replaceAll(/\r\n?/gu, "\n") === other.replaceAll(/\r\n?/gu, "\n");

const same = (one: unknown, other: unknown): boolean =>
  JSON.stringify(one) === JSON.stringify(other);

/** What a version is kept for: tempo, loop and count-in change with every round of practice. */
const essence = ({ plan, picking }: SongSettings): unknown => [plan, picking];

/** Reads and writes the two files of a song so that neither is ever without the other. */
export type SongFiles = {
  readonly chartPath: (id: string) => string;
  readonly settingsPath: (id: string) => string;
  /** Brings a save that was broken off to its end first. */
  readonly read: (id: string) => Promise<Answer<SongOnDisk>>;
  /** `now` is what the files have. */
  readonly write: (
    id: string,
    now: SongOnDisk,
    next: Pick<SongVersionFile, "text" | "settings">,
  ) => Promise<void>;
  /** Writes both files of a new song. */
  readonly begin: (id: string, song: Pick<SongVersionFile, "text" | "settings">) => Promise<void>;
  /** Sets a damaged chart aside and puts the last good version in its place. */
  readonly mend: (id: string) => Promise<Answer<null>>;
};

/** How a chart that is not what was saved last is damaged; null where someone just edited it. */
const damageOf = (path: string, text: string, saved: string): string | null => {
  if (text.trim() === "" && saved.trim() !== "") {
    return words.keeping.chartEmpty(path);
  }
  const isCut = text.length < saved.length && saved.startsWith(text);
  const atLineEnd = text.endsWith("\n") || saved[text.length] === "\n";
  return isCut && !atLineEnd ? words.keeping.chartCut(path) : null;
};

/** The files of the songs in a folder. */
export const makeSongFiles = (
  folder: string,
  disk: Disk,
  last: LastSavedNote,
  versions: EarlierVersions,
  remark: Remark,
): SongFiles => {
  const chartPath = (id: string): string => join(folder, `${id}${CHART}`);
  const settingsPath = (id: string): string => join(folder, `${id}${SETTINGS}`);

  /**
   * Whether a save may have ended between its note and this file. Equal times tell nothing: a disk's
   * clock may stand for some milliseconds.
   */
  const isBehind = async (path: string, note: LastSaved): Promise<boolean> =>
    (await stat(path)).mtimeMs <= note.writtenMs;

  const readSettings = async (
    id: string,
    note: LastSaved | null,
    text: string,
  ): Promise<Pick<SongOnDisk, "settings" | "hasSettings">> => {
    const path = settingsPath(id);
    const kept = await readKept(disk, path, songSettingsSchema);
    const meant = note && sameText(note.text, text) ? note.settings : null;
    if (kept.kind === "value") {
      if (!(note && meant) || same(kept.value, meant) || !(await isBehind(path, note))) {
        return { settings: kept.value, hasSettings: true };
      }
      await writeJson(disk, path, meant);
      return { settings: meant, hasSettings: true };
    }
    const back = kept.kind === "none" ? meant : (note?.settings ?? null);
    if (kept.kind === "damaged") {
      remark({
        code: "damaged",
        says: words.keeping.settingsDamaged(id, back !== null),
        try: words.keeping.keptAside(kept.aside),
      });
    }
    if (back !== null) {
      await writeJson(disk, path, back);
    }
    return { settings: back ?? newSongSettings, hasSettings: back !== null };
  };

  const read = async (id: string): Promise<Answer<SongOnDisk>> => {
    const path = chartPath(id);
    const chart = await readChartFile(path);
    if (!chart.ok) {
      return chart;
    }
    const note = await last.read(id);
    let { text, changedMs: savedMs } = chart.value;
    if (note && sameText(note.text, text)) {
      savedMs = note.savedMs;
    } else if (note) {
      if (note.before === digestOf(text) && (await isBehind(path, note))) {
        await disk.writeText(path, note.text);
        ({ text, savedMs } = note);
      } else {
        const says = damageOf(path, text, note.text);
        if (says !== null) {
          return failed("damaged", says, words.keeping.mendChart);
        }
      }
    }
    return given({ text, savedMs, ...(await readSettings(id, note, text)) });
  };

  /** The last state of a damaged chart that can be trusted. */
  const lastGood = async (id: string): Promise<SongVersionFile | null> => {
    const note = await last.read(id);
    if (note) {
      return note;
    }
    for (const { version } of await versions.list(id)) {
      const good = await versions.read(id, version);
      if (good) {
        return good;
      }
    }
    return null;
  };

  return {
    chartPath,
    settingsPath,
    read,

    write: async (id, now, next) => {
      const sameChart = sameText(now.text, next.text);
      const sameSettings = now.hasSettings && same(now.settings, next.settings);
      if (sameChart && sameSettings) {
        return;
      }
      const nowMs = Date.now();
      if (!sameChart || !same(essence(now.settings), essence(next.settings))) {
        const { savedMs, text, settings } = now;
        await versions.keep(id, { savedMs, text, settings }, nowMs);
      }
      await last.write(id, { savedMs: nowMs, ...next }, now.text);
      if (!sameChart) {
        try {
          await disk.writeText(chartPath(id), next.text);
        } catch (error) {
          // The player is told, and may leave without it: it must not come back by itself.
          await last.forget(id);
          throw error;
        }
      }
      if (!sameSettings) {
        await writeJson(disk, settingsPath(id), next.settings);
      }
    },

    begin: async (id, song) => {
      await last.write(id, { savedMs: Date.now(), ...song }, null);
      await writeJson(disk, settingsPath(id), song.settings);
      // The chart last: a song without one is not in the songbook yet.
      await disk.writeText(chartPath(id), song.text);
    },

    mend: async (id) => {
      const now = await read(id);
      if (now.ok || now.problem.code !== "damaged") {
        return now.ok ? given(null) : now;
      }
      const path = chartPath(id);
      const good = await lastGood(id);
      const text = good?.text ?? (await guessedText(path));
      if (text === null) {
        return now;
      }
      const aside = `${path}.damaged-${stamp()}`;
      await copyFile(path, aside, constants.COPYFILE_EXCL);
      const copy = await open(aside, "r+");
      await copy.sync();
      await copy.close();
      if (good) {
        await last.write(id, good, null);
        await writeJson(disk, settingsPath(id), good.settings);
      }
      await disk.writeText(path, text);
      const { chartMended, chartGuessed, keptAside } = words.keeping;
      remark({
        code: "damaged",
        says: good ? chartMended : chartGuessed,
        try: keptAside(aside),
      });
      return given(null);
    },
  };
};
