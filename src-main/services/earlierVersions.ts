import { readdir, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import * as v from "valibot";
import {
  type KeptVersion,
  MAX_CHART_CHARACTERS,
  type SongVersionFile,
} from "../../src-shared/host.ts";
import { songSettingsSchema } from "../../src-shared/settings.ts";
import { type Disk, isMissing } from "./disk.ts";
import { peekJson, writeJson } from "./jsonFile.ts";
import { isWorthKeeping, versionsToDrop } from "./thinVersions.ts";

/** The folder beside the songs that has a folder of earlier versions for each. */
export const VERSIONS = ".versions";

const schema = v.object({
  savedMs: v.pipe(v.number(), v.minValue(0)),
  text: v.pipe(v.string(), v.maxLength(MAX_CHART_CHARACTERS)),
  settings: songSettingsSchema,
});

const NAME = /^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})(\d{3})Z$/u;

const nameOf = (savedMs: number): string =>
  new Date(savedMs).toISOString().replace(/[^0-9TZ]/gu, "");

const savedMsOf = (name: string): number | null => {
  const [, year, month, day, hour, minute, second, ms] = NAME.exec(name) ?? [];
  return year === undefined
    ? null
    : Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}.${ms}Z`);
};

type Found = KeptVersion & { readonly bytes: number };

/** What a song was before, one file for each version. */
export type EarlierVersions = {
  /** All that are kept, the newest first. */
  readonly list: (id: string) => Promise<readonly KeptVersion[]>;
  /** null where it is not kept, or damaged. */
  readonly read: (id: string, version: string) => Promise<SongVersionFile | null>;
  /** Keeps what is about to be replaced, where that is worth it, and lets old ones go. */
  readonly keep: (id: string, replaced: SongVersionFile, nowMs: number) => Promise<void>;
};

/** Whether a name is one that a version may have; so none leads out of the folder. */
export const isVersionName = (name: string): boolean => NAME.test(name);

/** The earlier versions of the songs in a folder. */
export const makeEarlierVersions = (songbook: string, disk: Disk): EarlierVersions => {
  const folderOf = (id: string): string => join(songbook, VERSIONS, id);
  const pathOf = (id: string, version: string): string => join(folderOf(id), `${version}.json`);

  const found = async (id: string): Promise<readonly Found[]> => {
    let names: readonly string[];
    try {
      names = await readdir(folderOf(id));
    } catch (error) {
      if (isMissing(error)) {
        return [];
      }
      throw error;
    }
    const all: Found[] = [];
    for (const name of names) {
      const version = name.replace(/\.json$/u, "");
      const savedMs = savedMsOf(version);
      if (savedMs !== null && name.endsWith(".json")) {
        all.push({ version, savedMs, bytes: (await stat(pathOf(id, version))).size });
      }
    }
    return all.toSorted((one, other) => other.savedMs - one.savedMs);
  };

  return {
    list: async (id) => (await found(id)).map(({ version, savedMs }) => ({ version, savedMs })),

    read: async (id, version) =>
      isVersionName(version) ? peekJson(pathOf(id, version), schema) : null,

    keep: async (id, replaced, nowMs) => {
      const kept = await found(id);
      if (!isWorthKeeping(replaced.savedMs, kept[0]?.savedMs ?? null, nowMs)) {
        return;
      }
      const version = nameOf(replaced.savedMs);
      await writeJson(disk, pathOf(id, version), replaced);
      for (const old of versionsToDrop(await found(id), nowMs)) {
        await rm(pathOf(id, old.version), { force: true });
      }
    },
  };
};
