import { createHash } from "node:crypto";
import { rm, stat } from "node:fs/promises";
import { join } from "node:path";
import * as v from "valibot";
import { MAX_CHART_CHARACTERS, type SongVersionFile } from "../../src-shared/host.ts";
import { songSettingsSchema } from "../../src-shared/settings.ts";
import type { Disk } from "./disk.ts";
import { VERSIONS } from "./earlierVersions.ts";
import { peekJson, writeJson } from "./jsonFile.ts";

const schema = v.object({
  savedMs: v.pipe(v.number(), v.minValue(0)),
  text: v.pipe(v.string(), v.maxLength(MAX_CHART_CHARACTERS)),
  settings: songSettingsSchema,
  /** What the chart said before, as a digest; null for a new song. */
  before: v.nullable(v.string()),
});

/** What was meant to be saved last: chart and settings in one file, written before the two. */
export type LastSaved = SongVersionFile & {
  readonly before: string | null;
  /** When its file was written, by the disk's clock. */
  readonly writtenMs: number;
};

/** A text's digest, whatever its line breaks. */
export const digestOf = (text: string): string =>
  createHash("sha256").update(text.replaceAll(/\r\n?/gu, "\n")).digest("hex");

/** The note of a song's last save, from which a save that was broken off is brought to its end. */
export type LastSavedNote = {
  readonly read: (id: string) => Promise<LastSaved | null>;
  readonly write: (id: string, saved: SongVersionFile, before: string | null) => Promise<void>;
  readonly forget: (id: string) => Promise<void>;
};

/** The notes of the songs in a folder. */
export const makeLastSavedNote = (songbook: string, disk: Disk): LastSavedNote => {
  const pathOf = (id: string): string => join(songbook, VERSIONS, id, "last.json");
  return {
    read: async (id) => {
      const note = await peekJson(pathOf(id), schema);
      return note && { ...note, writtenMs: (await stat(pathOf(id))).mtimeMs };
    },
    write: (id, { savedMs, text, settings }, before) =>
      writeJson(disk, pathOf(id), {
        savedMs,
        text,
        settings,
        before: before === null ? null : digestOf(before),
      }),
    forget: (id) => rm(pathOf(id), { force: true }),
  };
};
