import { open } from "node:fs/promises";
import { basename, isAbsolute, resolve } from "node:path";
import { MAX_IMPORT_BYTES } from "../../src-shared/exchange/importing.ts";
import type { Answer, HandedFile } from "../../src-shared/host.ts";
import { given } from "./answer.ts";

/** Files that the system hands to the program, on their way to the screen. */
export type HandedFiles = {
  /** Puts files in the queue by their paths. */
  readonly offer: (paths: readonly string[]) => void;
  /** Reads what is in the queue. What cannot be read stays in it no longer, and is said. */
  readonly take: () => Promise<Answer<readonly HandedFile[]>>;
};

/** Endings of the files that songs come in. */
const SONG_FILE = /\.(?:shortslide|abc|musicxml|mxl)$/iu;

/** The files among a program's arguments that songs may be in. */
export const songFilesIn = (args: readonly string[], folder: string): readonly string[] =>
  args
    .filter((arg) => !arg.startsWith("-") && SONG_FILE.test(arg))
    .map((arg) => (isAbsolute(arg) ? arg : resolve(folder, arg)));

const readStart = async (path: string): Promise<Buffer> => {
  const file = await open(path, "r");
  try {
    // One byte more than may be: what is too large need not be read whole to be refused.
    const buffer = Buffer.alloc(Math.min((await file.stat()).size, MAX_IMPORT_BYTES + 1));
    const { bytesRead } = await file.read(buffer, 0, buffer.length, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
};

/** A queue of handed files; only paths that the system gave are ever read, never one of the screen's. */
export const makeHandedFiles = (): HandedFiles => {
  let waiting: readonly string[] = [];
  return {
    offer: (paths) => {
      waiting = [...waiting, ...paths];
    },
    take: async () => {
      const files: HandedFile[] = [];
      while (waiting.length > 0) {
        const [path, ...rest] = waiting;
        waiting = rest;
        if (path !== undefined) {
          files.push({ name: basename(path), base64: (await readStart(path)).toString("base64") });
        }
      }
      return given(files);
    },
  };
};
