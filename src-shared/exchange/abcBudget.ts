import { type Refusal, refuse } from "../harmony/refusal.ts";
import { words } from "../wordTable.ts";

/** A line of music is no longer than this, in characters: some hundred bars. */
const MAX_LINE = 2000;
/** No mark stands so many times running in music. */
const MAX_RUN = 40;
/** So many overlaid voices (ABC 2.1, section 7.4) a tune has at most. */
const MAX_OVERLAYS = 128;

const tooLongRun = new RegExp(`([^\\w\\s%])\\1{${MAX_RUN},}`);

/**
 * Why a tune is no music that the parser would get through: its work grows with the square of a line,
 * and of what is overlaid. null where it is.
 */
export const abcBudget = (text: string): Refusal | null => {
  const lines = text.split("\n");
  const advice = words.import.abc.breakLines;
  for (const [index, line] of lines.entries()) {
    if (line.length > MAX_LINE) {
      return refuse(words.import.abc.longLine(index + 1, MAX_LINE), advice);
    }
    const run = tooLongRun.exec(line)?.[1];
    if (run !== undefined && !/^(?:[A-Za-z]:|%)/.test(line)) {
      return refuse(
        words.import.abc.noMusic(index + 1, run, MAX_RUN),
        words.import.abc.chooseTunes,
      );
    }
  }
  const overlays = lines
    .filter((line) => !/^(?:[A-Za-z]:|%)/.test(line))
    .reduce((sum, line) => sum + line.split("&").length - 1, 0);
  return overlays > MAX_OVERLAYS
    ? refuse(words.import.abc.overlays(MAX_OVERLAYS), words.import.abc.overlaysTry)
    : null;
};
