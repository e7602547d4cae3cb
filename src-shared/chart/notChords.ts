import type { Diagnostic } from "../diagnostic.ts";
import type { SymbolReading } from "./chordSymbol.ts";
import { fieldNames } from "./fields.ts";
import { errorAt } from "./spot.ts";
import type { Token } from "./tokens.ts";

/**
 * Tells a line of words (a lyric, a heading, a header field without its colon) from a line of bars;
 * null for bars. A line with any chord, mark or bar line is never taken for words.
 */
export const notChords = (
  tokens: readonly Token[],
  read: (symbol: string) => SymbolReading,
): Diagnostic | null => {
  const words = tokens.filter((token) => token.kind === "word");
  const others = tokens.filter(
    (token) => token.kind !== "word" && !(token.kind === "stray" && token.text === ":"),
  );
  const first = words[0];
  const last = words.at(-1);
  if (first === undefined || last === undefined || others.length > 1) return null;
  const spot = { ...first, length: last.offset + last.length - first.offset };

  const field = fieldNames.find((name) => name.toLowerCase() === first.text.toLowerCase());
  if (field !== undefined) {
    const value = words.slice(1, 8).map((word) => word.text);
    const says = "A field of the header has a colon.";
    return errorAt(spot, "not-chords", says, `Write ${[`${field}:`, ...value].join(" ")}`);
  }

  const figures = words.filter((word) => /^\d{1,2}$/.test(word.text));
  const isWord = (text: string): boolean => !/^[.,'’…%/-]|\d/.test(text) && !read(text).ok;
  const isHeading = /^\p{L}{4,}$/u.test(first.text) && isWord(first.text);
  const isProse =
    words.length - figures.length === 1 && figures.length <= 1
      ? isHeading
      : figures.length === 0 && words.every((word) => isWord(word.text));
  if (!isProse) return null;
  const label = words.map((word) => word.text.replace(/[^\p{L}\d]/gu, "")).join("-");
  return errorAt(
    spot,
    "not-chords",
    "There are no chords on this line.",
    isHeading && words.length <= 2
      ? `To start a section write [${label.slice(0, 24)}]; for a remark put # before it.`
      : "For words or a remark put # before the line.",
  );
};
