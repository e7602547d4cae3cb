import { readFile, stat } from "node:fs/promises";
import { type Answer, MAX_CHART_CHARACTERS } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed, given } from "./answer.ts";
import { isMissing } from "./disk.ts";

/** A chart file is at most this long: UTF-8 needs three bytes at most for what counts as one character. */
export const MAX_CHART_BYTES: number = MAX_CHART_CHARACTERS * 3;

/** A chart as its file has it, and when it was last written. */
export type ChartFile = { readonly text: string; readonly changedMs: number };

/** The answer to a song that is not in the songbook. */
export const noSuchSong = (): Answer<never> =>
  failed("not-found", words.disk.noSong, words.disk.noSongTry);

const tooLong = (path: string): Answer<never> =>
  failed("damaged", words.keeping.chartTooLong(path), words.keeping.shortenChart);

/** UTF-8 bytes as text; null where they are none. A power cut leaves NUL bytes, which no chart has. */
const textOf = (bytes: Uint8Array): string | null => {
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return text.includes("\0") ? null : text;
  } catch (error) {
    // A TypeError with this code is what the Encoding standard's fatal decoder throws.
    if (
      error instanceof TypeError &&
      "code" in error &&
      error.code === "ERR_ENCODING_INVALID_ENCODED_DATA"
    ) {
      return null;
    }
    throw error;
  }
};

/**
 * A chart's text. A file that is no UTF-8 text, or too long, is left as it is and answered with
 * why: read in part, it would be saved in part.
 */
export const readChartFile = async (path: string): Promise<Answer<ChartFile>> => {
  try {
    const { size, mtimeMs } = await stat(path);
    if (size > MAX_CHART_BYTES) {
      return tooLong(path);
    }
    const text = textOf(await readFile(path));
    if (text === null) {
      return failed("damaged", words.keeping.chartNotText(path), words.keeping.mendOrConvert);
    }
    return text.length > MAX_CHART_CHARACTERS ? tooLong(path) : given({ text, changedMs: mtimeMs });
  } catch (error) {
    if (isMissing(error)) {
      return noSuchSong();
    }
    throw error;
  }
};

/**
 * What can be read of a chart file that is no UTF-8 text: as Windows-1252, which most old text files
 * are in and in which every byte is a character; null where it is too long.
 */
export const guessedText = async (path: string): Promise<string | null> => {
  const { size } = await stat(path);
  if (size > MAX_CHART_CHARACTERS) {
    return null;
  }
  return new TextDecoder("windows-1252").decode(await readFile(path)).replaceAll("\0", "");
};
