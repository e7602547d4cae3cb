import type { Diagnostic } from "../diagnostic.ts";
import { words as wordTable } from "../wordTable.ts";
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
    const says = wordTable.notes.notChords.field;
    return errorAt(
      spot,
      "not-chords",
      says,
      wordTable.notes.notChords.fieldTry([`${field}:`, ...value].join(" ")),
    );
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
    wordTable.notes.notChords.says,
    isHeading && words.length <= 2
      ? wordTable.notes.notChords.section(label.slice(0, 24))
      : wordTable.notes.notChords.try,
  );
};
