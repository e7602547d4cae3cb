import { type Refusal, refuse } from "../harmony/refusal.ts";

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
  const advice = "Break the lines of music, four to eight bars each.";
  for (const [index, line] of lines.entries()) {
    if (line.length > MAX_LINE) {
      return refuse(
        `Line ${index + 1} of this tune is longer than ${MAX_LINE} characters.`,
        advice,
      );
    }
    const run = tooLongRun.exec(line)?.[1];
    if (run !== undefined && !/^(?:[A-Za-z]:|%)/.test(line)) {
      return refuse(
        `Line ${index + 1} of this tune is no music: ${run} stands more than ${MAX_RUN} times running.`,
        "Choose a file of tunes in ABC.",
      );
    }
  }
  const overlays = lines
    .filter((line) => !/^(?:[A-Za-z]:|%)/.test(line))
    .reduce((sum, line) => sum + line.split("&").length - 1, 0);
  return overlays > MAX_OVERLAYS
    ? refuse(
        `This tune overlays more than ${MAX_OVERLAYS} voices.`,
        "Write them as voices of their own, with V: lines.",
      )
    : null;
};
