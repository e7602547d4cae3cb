import { readFile, stat } from "node:fs/promises";
import { type Answer, MAX_CHART_CHARACTERS } from "../../src-shared/host.ts";
import { failed, given } from "./answer.ts";
import { isMissing } from "./disk.ts";

/** A chart file is at most this long: UTF-8 needs three bytes at most for what counts as one character. */
export const MAX_CHART_BYTES: number = MAX_CHART_CHARACTERS * 3;

/** A chart as its file has it, and when it was last written. */
export type ChartFile = { readonly text: string; readonly changedMs: number };

/** The answer to a song that is not in the songbook. */
export const noSuchSong = (): Answer<never> =>
  failed(
    "not-found",
    "This song is no longer in the songbook.",
    "Go back to the songbook; it may have been removed or renamed elsewhere.",
  );

/**
 * A chart's text. A file that is no UTF-8 text, or too long, is left as it is and answered with
 * why: read in part, it would be saved in part.
 */
export const readChartFile = async (path: string): Promise<Answer<ChartFile>> => {
  try {
    const { size, mtimeMs } = await stat(path);
    if (size > MAX_CHART_BYTES) {
      return failed(
        "damaged",
        `The chart ${path} is too long to open.`,
        "Shorten it in a text editor.",
      );
    }
    const text = new TextDecoder("utf-8", { fatal: true }).decode(await readFile(path));
    return text.length > MAX_CHART_CHARACTERS
      ? failed("damaged", `The chart ${path} is too long to open.`, "Shorten it in a text editor.")
      : given({ text, changedMs: mtimeMs });
  } catch (error) {
    if (isMissing(error)) {
      return noSuchSong();
    }
    if (
      error instanceof TypeError &&
      "code" in error &&
      error.code === "ERR_ENCODING_INVALID_ENCODED_DATA"
    ) {
      return failed(
        "damaged",
        `The chart ${path} is not UTF-8 text.`,
        "Save it as UTF-8 in a text editor.",
      );
    }
    throw error;
  }
};
