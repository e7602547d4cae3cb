import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, relative, sep } from "node:path";
import { onTestFinished } from "vitest";

/** A fresh folder on the real disk, removed when the test has ended. */
export const tempFolder = async (): Promise<string> => {
  const folder = await mkdtemp(join(tmpdir(), "shortslide-test-"));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
};

/** Every file below a folder with what it holds, to tell whether anything was touched. */
export const contentsOf = async (folder: string): Promise<Record<string, string>> => {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile());
  const texts = await Promise.all(
    files.map(async ({ parentPath, name }) => {
      const path = join(parentPath, name);
      return [path, await readFile(path, "utf8")] as const;
    }),
  );
  return Object.fromEntries(texts);
};

/** Likewise, without what is kept in hidden folders. */
export const visibleContentsOf = async (folder: string): Promise<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(await contentsOf(folder)).filter(
      ([path]) =>
        !relative(folder, path)
          .split(sep)
          .some((name) => name.startsWith(".")),
    ),
  );
