import { mkdir, open, readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { type LogLine, writeLogLine } from "../../src-shared/practice/logLine.ts";
import { type LogContents, readLog } from "../../src-shared/practice/readLog.ts";
import { isMissing } from "./disk.ts";
import { isSystemError } from "./diskProblem.ts";

/** What was practised, on disk. */
export type PracticeLogFile = {
  readonly read: () => Promise<LogContents>;
  /** Done when the line is on the disk itself, not only on its way there. */
  readonly append: (line: LogLine) => Promise<void>;
};

const LINE_BREAK = 0x0a;

/** Sees to it that a file that was just made is still in its folder after a power cut. */
const syncFolder = async (folder: string): Promise<void> => {
  // Windows opens no folder as a file, and keeps the entry without being told to.
  if (process.platform === "win32") {
    return;
  }
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } catch (error) {
    // Some network and memory file systems cannot do it; the line itself is safe all the same.
    if (!(isSystemError(error) && (error.code === "EINVAL" || error.code === "ENOTSUP"))) {
      throw error;
    }
  } finally {
    await handle.close();
  }
};

/**
 * Keeps the log in one file of the home folder, one line of JSON for each round. It only ever grows:
 * a crash can cut the line that is being written, and nothing before it. What follows a cut line
 * starts on a line of its own.
 */
export const makePracticeLog = (home: string): PracticeLogFile => {
  const path = join(home, "practice.jsonl");
  return {
    read: async () => {
      try {
        return readLog(await readFile(path, "utf8"));
      } catch (error) {
        if (isMissing(error)) {
          return readLog("");
        }
        throw error;
      }
    },

    append: async (line) => {
      await mkdir(dirname(path), { recursive: true });
      const file = await open(path, "a+");
      try {
        const { size } = await file.stat();
        const last = new Uint8Array([LINE_BREAK]);
        if (size > 0) {
          await file.read(last, 0, 1, size - 1);
        }
        const startsAnew = last[0] === LINE_BREAK ? "" : "\n";
        // In one piece, so that another window's line never comes between.
        await file.appendFile(`${startsAnew}${writeLogLine(line)}\n`, "utf8");
        await file.sync();
        if (size === 0) {
          await syncFolder(dirname(path));
        }
      } finally {
        await file.close();
      }
    },
  };
};
