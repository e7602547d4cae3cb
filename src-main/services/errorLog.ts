import { appendFileSync, mkdirSync, renameSync, statSync } from "node:fs";
import { open } from "node:fs/promises";
import { join } from "node:path";
import type { ErrorLog } from "../../src-shared/host.ts";
import { isMissing } from "./disk.ts";
import { isSystemError } from "./diskProblem.ts";

/** A file this long is put away as the one before it, whose forerunner goes. */
export const MOST_LOG_BYTES: number = 256 * 1024;
const MOST_ENTRY_CHARACTERS = 12_000;
const SHOWN_BYTES = 64 * 1024;

/** Who says that something went wrong. */
type Speaker = "machine" | "screen";

/** What went wrong, in a file of bounded size that the player can open. */
export type ErrorLogFile = {
  /** Throws where the disk fails. At once: whoever writes may be about to end. */
  readonly write: (who: Speaker, what: string) => void;
  readonly read: () => Promise<ErrorLog>;
};

/** One entry: a line, and what belongs to it indented; without characters that move a terminal. */
const entryOf = (who: Speaker, what: string): string => {
  const plain = what
    .slice(0, MOST_ENTRY_CHARACTERS)
    .replaceAll(/\r\n?/gu, "\n")
    .replaceAll(/[^\P{Cc}\n\t]/gu, "?")
    .trim();
  return `${new Date().toISOString()} ${who}: ${plain.replaceAll("\n", "\n    ")}\n`;
};

const sizeOf = (path: string): number => {
  try {
    return statSync(path).size;
  } catch (error) {
    if (isMissing(error)) {
      return 0;
    }
    throw error;
  }
};

/** The last part of a file, from the beginning of an entry's line; "" where there is no file. */
const tailOf = async (path: string, bytes: number): Promise<string> => {
  try {
    const file = await open(path, "r");
    try {
      const { size } = await file.stat();
      const length = Math.min(size, bytes);
      const { buffer } = await file.read(Buffer.alloc(length), 0, length, size - length);
      const text = buffer.toString("utf8");
      return length === size ? text : text.slice(text.indexOf("\n") + 1);
    } finally {
      await file.close();
    }
  } catch (error) {
    if (isMissing(error)) {
      return "";
    }
    throw error;
  }
};

/** The log of a home folder. */
export const makeErrorLog = (home: string): ErrorLogFile => {
  const folder = join(home, "log");
  const path = join(folder, "errors.log");
  const before = join(folder, "errors.1.log");
  return {
    write: (who, what) => {
      const entry = entryOf(who, what);
      mkdirSync(folder, { recursive: true });
      if (sizeOf(path) + Buffer.byteLength(entry) > MOST_LOG_BYTES) {
        try {
          renameSync(path, before);
        } catch (error) {
          // Another Shortslide on the same home has just put it away.
          if (!isMissing(error)) {
            throw error;
          }
        }
      }
      appendFileSync(path, entry);
    },
    read: async () => {
      const now = await tailOf(path, SHOWN_BYTES);
      const room = SHOWN_BYTES - Buffer.byteLength(now);
      const older = room > 0 && now.length > 0 ? await tailOf(before, room) : "";
      return { path, text: `${older}${now}` };
    },
  };
};

/** Writes down what the machine says went wrong; where that fails too, says so on `otherwise`. */
export const loggingTo =
  (log: ErrorLogFile, otherwise: (line: string) => void) =>
  (line: string): void => {
    otherwise(line);
    try {
      log.write("machine", line);
    } catch (error) {
      if (!isSystemError(error)) {
        throw error;
      }
      otherwise(`the log cannot be written: ${error.message}`);
    }
  };
