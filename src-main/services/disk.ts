import { randomBytes } from "node:crypto";
import { open } from "node:fs/promises";
import { dirname } from "node:path";
import writeFileAtomic from "write-file-atomic";
import { isSystemError } from "./diskProblem.ts";

/** Puts a text in a file whole, or not at all. */
export type WriteText = (path: string, text: string) => Promise<void>;

/** What the services need besides their folder. */
export type Disk = {
  readonly writeText: WriteText;
  /** For whoever runs the program; the player is told by the answer. */
  readonly log: (line: string) => void;
};

/** File systems that cannot write out a folder by itself say so by one of these. */
const CANNOT_SYNC: ReadonlySet<string> = new Set(["EINVAL", "ENOTSUP", "EPERM", "EISDIR"]);

/** Writes a folder's names out, so that a rename outlives a power cut. Windows has no such call. */
const syncFolder = async (folder: string): Promise<void> => {
  if (process.platform === "win32") {
    return;
  }
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } catch (error) {
    if (!(isSystemError(error) && CANNOT_SYNC.has(error.code))) {
      throw error;
    }
  } finally {
    await handle.close();
  }
};

/** The machine's own disk. */
export const realDisk: Disk = {
  writeText: async (path, text) => {
    // Into a temporary file beside it, fsync, rename; then the folder.
    await writeFileAtomic(path, text, { encoding: "utf8", fsync: true });
    await syncFolder(dirname(path));
  },
  log: (line) => {
    process.stderr.write(`shortslide: ${line}\n`);
  },
};

/** Whether an error says that a file or folder is not there. */
export const isMissing = (error: unknown): boolean =>
  isSystemError(error) && error.code === "ENOENT";

/** A name ending by date and chance, so that no two are the same and old ones sort first. */
export const stamp = (): string =>
  `${new Date().toISOString().replace(/[^0-9TZ]/gu, "")}-${randomBytes(4).toString("hex")}`;
