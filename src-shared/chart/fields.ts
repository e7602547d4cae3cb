import type { Spot, TextLine } from "./spot.ts";
import { spotIn } from "./spot.ts";

/** The header fields of a chart. */
export type FieldName = "Title" | "Key" | "Time" | "Tempo" | "Capo" | "Tuning" | "Form";

/** All fields, in the order in which a chart is written. */
export const fieldNames: readonly FieldName[] = [
  "Title",
  "Key",
  "Time",
  "Tempo",
  "Capo",
  "Tuning",
  "Form",
];

/** One field as written. */
export type Field = {
  /** null where the word before the colon is no field of ours. */
  readonly name: FieldName | null;
  readonly word: Spot & { readonly text: string };
  /** Trimmed; where it is empty it stands right behind the colon. */
  readonly value: Spot & { readonly text: string };
};

/** What a text is to a chart. `#` at a line's start or after white space starts a comment. */
export type ChartLine = {
  readonly kind: "fields" | "body";
  /** Without its comment. */
  readonly line: TextLine;
};

const known = (word: string): FieldName | null =>
  fieldNames.find((name) => name.toLowerCase() === word.toLowerCase()) ?? null;

/**
 * A line without its comment. A # that touches a figure ("#4dim", "Jam #2") starts none.
 * @example withoutComment("G F# # twice") // => "G F# "
 */
export const withoutComment = (text: string): string => {
  const start = /(?:^|\s)#(?!\d)/.exec(text);
  return start === null ? text : text.slice(0, start[0] === "#" ? start.index : start.index + 1);
};

// A word with its colon; a colon that is part of a bar line ("G:|", "C::") makes no field.
const opening = /^\s*([\p{L}]+):(?!\[?[|:\]])/u;
const fieldStart = /(?:^|\s)([\p{L}]+):(?!\[?[|:\]])/gu;

/**
 * Tells a header line from a line of bars.
 * @example chartLine({ text: "Key: G", offset: 0, line: 1 }).kind // => "fields"
 */
export const chartLine = (line: TextLine): ChartLine => {
  const text = withoutComment(line.text);
  return { kind: opening.test(text) ? "fields" : "body", line: { ...line, text } };
};

/**
 * The fields of a header line. A title runs on to the next known field; any other value to the next
 * word with a colon.
 * @example fieldsOf({ text: "Key: G  Capo: 2", offset: 0, line: 1 }).map((field) => field.value.text) // => ["G", "2"]
 */
export const fieldsOf = (line: TextLine): readonly Field[] => {
  const starts: { name: FieldName | null; word: string; at: number }[] = [];
  for (const found of line.text.matchAll(fieldStart)) {
    const word = found[1] ?? "";
    const name = known(word);
    if (name === null && starts.at(-1)?.name === "Title") continue;
    starts.push({ name, word, at: found.index + found[0].length - word.length - 1 });
  }
  return starts.map(({ name, word, at }, index) => {
    const from = at + word.length + 1;
    const raw = line.text.slice(from, starts[index + 1]?.at);
    const text = raw.trim();
    const lead = text === "" ? 0 : raw.length - raw.trimStart().length;
    return {
      name,
      word: { ...spotIn(line, at, word.length), text: word },
      value: { ...spotIn(line, from + lead, text.length), text },
    };
  });
};

/**
 * A header value that a chart can hold: one line, no remark in it, no field's name with a colon.
 * @example cleanValue("Jam\nKey: of #it") // => "Jam Key of it"
 */
export const cleanValue = (value: string): string => {
  const names = fieldNames.join("|");
  return value
    .replace(/(^|\s)#+(?!\d)/g, "$1")
    .replace(new RegExp(`(^|\\s)(${names}):+(?![|:\\]])`, "gi"), "$1$2")
    .replace(/\s+/g, " ")
    .trim();
};
