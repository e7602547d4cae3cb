import type { StringNumber } from "../neck/neck.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { Pick } from "./roll.ts";

/**
 * The string that a pick strikes in a voicing. Patterns are written for strings 3-2-1; on 4-3-2 each
 * finger lies one string lower; on all four the thumb takes string 4 at the start of the stay and on
 * each bar line (`opens`), string 3 otherwise. Common practice, no published source.
 */
export const homeString = (pick: Pick, voicing: Voicing, opens: boolean): StringNumber => {
  const [first, , , fourth] = voicing.frets;
  if (fourth === null) {
    return pick.string;
  }
  if (first === null) {
    return (pick.string + 1) as StringNumber;
  }
  return pick.finger === "T" && opens ? 4 : pick.string;
};
