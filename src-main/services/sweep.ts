import { readdir, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { type Disk, isMissing } from "./disk.ts";
import { isSystemError } from "./diskProblem.ts";
import { VERSIONS } from "./earlierVersions.ts";

/** Long enough for any save that is still under way, in this program or in another one. */
const STALE_MS = 60 * 60_000;
/** How the atomic writer names what it has not put in place yet. */
const UNFINISHED = /\.(?:txt|json)\.\d+$/u;

const isStale = async (path: string, nowMs: number): Promise<boolean> => {
  const { mtimeMs, size } = await stat(path);
  return nowMs - mtimeMs > STALE_MS && (UNFINISHED.test(path) || size === 0);
};

const sweepFolder = async (folder: string, nowMs: number): Promise<void> => {
  const entries = await readdir(folder, { withFileTypes: true });
  const names = new Set(entries.map(({ name }) => name));
  for (const { name } of entries) {
    const isClaim = name.endsWith(".json") && !names.has(name.replace(/json$/u, "txt"));
    const path = join(folder, name);
    if ((UNFINISHED.test(name) || isClaim) && (await isStale(path, nowMs))) {
      await rm(path);
    }
  }
};

/**
 * Takes away what saves that were killed have left: temporary files, and empty claims of a name.
 * Whatever stands in its way is logged; a songbook can be read all the same.
 */
export const sweep = async (songbook: string, disk: Disk, nowMs: number): Promise<void> => {
  try {
    await sweepFolder(songbook, nowMs);
    for (const { name } of await readdir(join(songbook, VERSIONS), { withFileTypes: true })) {
      await sweepFolder(join(songbook, VERSIONS, name), nowMs);
    }
  } catch (error) {
    if (!isSystemError(error)) {
      throw error;
    }
    if (!isMissing(error)) {
      disk.log(`the songbook could not be swept: ${error.message}`);
    }
  }
};
