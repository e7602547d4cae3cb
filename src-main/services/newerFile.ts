import { readFile } from "node:fs/promises";
import * as v from "valibot";
import { type Answer, MAX_CHART_CHARACTERS } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed, given } from "./answer.ts";
import { isMissing } from "./disk.ts";

const marked = v.looseObject({ version: v.number() });

const versionIn = (text: string): number | null => {
  try {
    const read = v.safeParse(marked, JSON.parse(text));
    return read.success ? read.output.version : null;
  } catch (error) {
    if (error instanceof SyntaxError) {
      return null;
    }
    throw error;
  }
};

/**
 * Refuses a JSON file that a later Shortslide wrote: what this one does not know would be lost by
 * the next save. A file of a known version, none at all, and a damaged one are not refused here.
 */
export const refuseNewer = async (path: string, known: number): Promise<Answer<null>> => {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    if (isMissing(error)) {
      return given(null);
    }
    throw error;
  }
  const version = text.length > MAX_CHART_CHARACTERS * 10 ? null : versionIn(text);
  return version !== null && version > known
    ? failed("damaged", words.shelf.newer(path), words.shelf.newerTry)
    : given(null);
};
