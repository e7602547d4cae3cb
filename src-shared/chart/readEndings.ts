import type { Diagnostic } from "../diagnostic.ts";
import { words as wordTable } from "../wordTable.ts";
import { errorAt } from "./spot.ts";
import type { EndingToken, Token } from "./tokens.ts";

/** No passage is played more often than this. */
export const MAX_PLAYS = 16;

const firstNumber = (token: EndingToken): number => Number.parseInt(token.text, 10);

/**
 * Settles which figures behind a bar line are endings and which are degrees, section by section.
 * "[1" is always an ending. A figure that touches a bar line, "|1", is one only where the same
 * section has an attached ":|2" (or "[2") later; ":|2" only where an ending stands before it.
 * Figures behind white space are degrees; all others become words.
 */
export const settleEndings = (tokens: readonly Token[]): readonly Token[] => {
  const later: boolean[] = [];
  let seen = false;
  for (let at = tokens.length - 1; at >= 0; at -= 1) {
    later[at] = seen;
    const token = tokens[at];
    if (token?.kind === "label") seen = false;
    if (token?.kind === "ending" && token.after !== "barLine" && firstNumber(token) > 1) {
      seen = true;
    }
  }
  let within = false;
  return tokens.map((token, at) => {
    if (token.kind === "label") within = false;
    if (token.kind !== "ending") return token;
    const isEnding =
      token.after === "bracket" ||
      (token.after === "barLine" && firstNumber(token) === 1 && later[at] === true) ||
      (token.after === "repeatEnd" && firstNumber(token) > 1 && within);
    if (!isEnding) return { ...token, kind: "word", touching: true };
    within = true;
    return token;
  });
};

/**
 * The passes on which an ending is played: "1", "1,3", "1-3", "1,3,5-7". At most 16; what cannot be
 * is left out and reported.
 */
export const readPasses = (
  token: EndingToken,
): { readonly passes: readonly number[]; readonly notes: readonly Diagnostic[] } => {
  const passes = new Set<number>();
  let odd = false;
  for (const part of token.text.split(",")) {
    const [one = 0, ...rest] = part.split("-").map(Number);
    const other = rest.at(-1) ?? one;
    const first = Math.min(one, other);
    const last = Math.max(one, other);
    odd ||= first < 1 || other < one || last > MAX_PLAYS || rest.length > 1;
    for (let pass = Math.max(1, first); pass <= Math.min(last, MAX_PLAYS); pass += 1) {
      passes.add(pass);
    }
  }
  const sorted = [...passes].toSorted((a, b) => a - b);
  if (!odd) return { passes: sorted, notes: [] };
  return {
    passes: sorted.length > 0 ? sorted : [1],
    notes: [
      errorAt(
        token,
        "bad-ending",
        wordTable.notes.ending.numbers(MAX_PLAYS),
        wordTable.notes.ending.numbersTry,
      ),
    ],
  };
};
