import { existsSync } from "node:fs";
import { writeFile } from "node:fs/promises";
import { type Disk, realDisk } from "../../src-main/services/disk.ts";

/** The real disk, keeping what is logged instead of printing it. */
export const quietDisk = (): Disk & { readonly lines: string[] } => {
  const lines: string[] = [];
  return { writeText: realDisk.writeText, log: (line) => lines.push(line), lines };
};

const noSpace = async (path: string, text: string): Promise<void> => {
  // Linux has a device that is always full: the error is then the system's own.
  if (existsSync("/dev/full")) {
    await writeFile("/dev/full", text);
  }
  throw Object.assign(new Error(`ENOSPC: no space left on device, write '${path}'`), {
    code: "ENOSPC",
    syscall: "write",
  });
};

/** A disk with no room left for a file whose path ends so. */
export const fullDisk = (ending: string): Disk => ({
  ...quietDisk(),
  writeText: (path, text) =>
    path.endsWith(ending) ? noSpace(path, text) : realDisk.writeText(path, text),
});
