import { join } from "node:path";
import {
  firstPreferences,
  type Preferences,
  preferencesSchema,
} from "../../src-shared/settings.ts";
import { words } from "../../src-shared/wordTable.ts";
import type { Disk } from "./disk.ts";
import { readKept, writeKept } from "./jsonFile.ts";
import { type Remark, remarkTo } from "./remarks.ts";

/** The player's preferences on disk. */
export type SettingsFile = {
  readonly read: () => Promise<Preferences>;
  readonly write: (preferences: Preferences) => Promise<void>;
};

/** Keeps the preferences in one file of the home folder. */
export const makeSettings = (
  home: string,
  disk: Disk,
  remark: Remark = remarkTo(disk.log),
): SettingsFile => {
  const path = join(home, "preferences.json");
  return {
    read: async () => {
      const kept = await readKept(disk, path, preferencesSchema);
      if (kept.kind === "value") {
        return kept.value;
      }
      if (kept.kind === "none") {
        return firstPreferences;
      }
      remark({
        code: "damaged",
        says: words.keeping.preferencesDamaged(kept.lastGood !== null),
        try: words.keeping.keptAside(kept.aside),
      });
      return kept.lastGood ?? firstPreferences;
    },
    write: (preferences) => writeKept(disk, path, preferences),
  };
};
