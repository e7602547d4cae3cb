import { join } from "node:path";
import {
  firstPreferences,
  type Preferences,
  preferencesSchema,
} from "../../src-shared/settings.ts";
import type { Disk } from "./disk.ts";
import { readJson, writeJson } from "./jsonFile.ts";

/** The player's preferences on disk. */
export type SettingsFile = {
  readonly read: () => Promise<Preferences>;
  readonly write: (preferences: Preferences) => Promise<void>;
};

/** Keeps the preferences in one file of the home folder. */
export const makeSettings = (home: string, disk: Disk): SettingsFile => {
  const path = join(home, "preferences.json");
  return {
    read: () => readJson(disk, path, preferencesSchema, firstPreferences),
    write: (preferences) => writeJson(disk, path, preferences),
  };
};
