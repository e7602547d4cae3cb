import { mkdir, readFile, rename } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import * as v from "valibot";
import { parseJson } from "../../src-shared/parseJson.ts";
import { type Disk, isMissing, stamp } from "./disk.ts";

const LAST_GOOD = ".last-good";

/** A file's text; null where there is no such file. */
const textIfThere = async (path: string): Promise<string | null> => {
  try {
    return await readFile(path, "utf8");
  } catch (error) {
    if (isMissing(error)) {
      return null;
    }
    throw error;
  }
};

/** A JSON file's value; null where there is none, or none that passes. Touches nothing. */
export const peekJson = async <T>(
  path: string,
  schema: v.GenericSchema<unknown, T>,
): Promise<T | null> => {
  const text = await textIfThere(path);
  const read = text === null ? null : v.safeParse(schema, parseJson(text));
  return read?.success ? read.output : null;
};

const copyOf = (path: string): string => join(dirname(path), LAST_GOOD, basename(path));

/** Writes a JSON file whole, and its folder where there is none. */
export const writeJson = async (disk: Disk, path: string, value: unknown): Promise<void> => {
  await mkdir(dirname(path), { recursive: true });
  await disk.writeText(path, `${JSON.stringify(value, null, 2)}\n`);
};

/** What a JSON file holds: a value, none, or something damaged that was set aside. */
export type KeptJson<T> =
  | { readonly kind: "value"; readonly value: T }
  | { readonly kind: "none" }
  | {
      readonly kind: "damaged";
      readonly aside: string;
      /** What `writeKept` wrote last, which is in the file again; null where that is not to be had. */
      readonly lastGood: T | null;
    };

/**
 * Reads a JSON file. A damaged one is set aside under another name, never written over, and the last
 * good one, where there is a copy, takes its place.
 */
export const readKept = async <T>(
  disk: Disk,
  path: string,
  schema: v.GenericSchema<unknown, T>,
): Promise<KeptJson<T>> => {
  const text = await textIfThere(path);
  if (text === null) {
    return { kind: "none" };
  }
  const read = v.safeParse(schema, parseJson(text));
  if (read.success) {
    return { kind: "value", value: read.output };
  }
  const aside = `${path}.damaged-${stamp()}`;
  await rename(path, aside);
  disk.log(`${path} was damaged; it is kept as ${aside}`);
  const lastGood = await peekJson(copyOf(path), schema);
  if (lastGood !== null) {
    await writeJson(disk, path, lastGood);
  }
  return { kind: "damaged", aside, lastGood };
};

/** What a JSON file holds; `otherwise` where there is none, or where it was damaged. */
export const readJson = async <T>(
  disk: Disk,
  path: string,
  schema: v.GenericSchema<unknown, T>,
  otherwise: T,
): Promise<T> => {
  const kept = await readKept(disk, path, schema);
  return kept.kind === "value" ? kept.value : otherwise;
};

/** Writes a JSON file and a copy of it, which `readKept` finds again where the file is damaged. */
export const writeKept = async (disk: Disk, path: string, value: unknown): Promise<void> => {
  await writeJson(disk, path, value);
  await writeJson(disk, copyOf(path), value);
};
