import { randomBytes } from "node:crypto";
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

/** The machine's own disk. */
export const realDisk: Disk = {
  writeText: async (path, text) => {
    await writeFileAtomic(path, text, { encoding: "utf8" });
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
