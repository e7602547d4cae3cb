import { mkdir, readFile, rename } from "node:fs/promises";
import { dirname } from "node:path";
import * as v from "valibot";
import { parseJson } from "../../src-shared/parseJson.ts";
import { type Disk, isMissing, stamp } from "./disk.ts";

/** What a JSON file holds: a value, none, or something damaged that was set aside. */
export type KeptJson<T> =
  | { readonly kind: "value"; readonly value: T }
  | { readonly kind: "none" }
  | { readonly kind: "damaged"; readonly aside: string };

/**
 * Reads a JSON file. A damaged one is set aside under another name, never written over.
 */
export const readKept = async <T>(
  disk: Disk,
  path: string,
  schema: v.GenericSchema<unknown, T>,
): Promise<KeptJson<T>> => {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    if (isMissing(error)) {
      return { kind: "none" };
    }
    throw error;
  }
  const read = v.safeParse(schema, parseJson(text));
  if (read.success) {
    return { kind: "value", value: read.output };
  }
  const aside = `${path}.damaged-${stamp()}`;
  await rename(path, aside);
  disk.log(`${path} was damaged; it is kept as ${aside}`);
  return { kind: "damaged", aside };
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

/** Writes a JSON file whole, and its folder where there is none. */
export const writeJson = async (disk: Disk, path: string, value: unknown): Promise<void> => {
  await mkdir(dirname(path), { recursive: true });
  await disk.writeText(path, `${JSON.stringify(value, null, 2)}\n`);
};
