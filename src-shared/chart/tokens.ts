import { type Spot, spotIn, type TextLine } from "./spot.ts";

/** A bar line of any kind. */
export type BarLine = Spot & {
  readonly kind: "barLine";
  /** How many times the passage that ends here is played; 1 where no repeat ends. */
  readonly closes: number;
  /** How many times the passage that starts here is played; 1 where no repeat starts. */
  readonly opens: number;
  /** "||", "|]", "[|": stops an ending, and a repeat without a start goes back to here. */
  readonly double: boolean;
};

/** A section's label; `closed` where its bracket is. */
export type LabelToken = Spot & {
  readonly kind: "label";
  readonly name: string;
  readonly closed: boolean;
};

/** Figures of an ending, and what they touch; only behind a bracket an ending for certain. */
export type EndingToken = Spot & {
  readonly kind: "ending";
  readonly text: string;
  readonly after: "bracket" | "barLine" | "repeatEnd";
};

/** Chord symbols and marks as typed; white space and bar lines end a word. */
export type WordToken = Spot & {
  readonly kind: "word";
  readonly text: string;
  /** A figure that touches the bar line before it. */
  readonly touching: boolean;
};

/** A colon or bracket that belongs to nothing. */
export type StrayToken = Spot & { readonly kind: "stray"; readonly text: string };

/** What a chart's body is made of. Every token lies within one line. */
export type Token =
  | BarLine
  | LabelToken
  | EndingToken
  | WordToken
  | StrayToken
  | (Spot & { readonly kind: "lineEnd" });

const labelled = /\[(\p{L}[^\][|]*)\]|\[(\p{L}[^\s\][|]*)/uy;
const numbered = /\[(\d+(?:[,-]\d+)*)\]?/y;
const barLines = /(:*)(\[?\|+\]?)(:*)|(::+)/y;
const attached = /\d+(?:[,-]\d+)*(?=\s|\||$)/y;
const word = /[^\s|:[\]]+/y;
const space = /\s+/y;

const at = (pattern: RegExp, text: string, from: number): RegExpExecArray | null => {
  pattern.lastIndex = from;
  return pattern.exec(text);
};

const barLine = (spot: Spot, found: RegExpExecArray): BarLine => {
  const [, left = "", pipes = "", right = "", colons] = found;
  const half = Math.max(1, Math.floor((colons?.length ?? 0) / 2));
  return {
    ...spot,
    kind: "barLine",
    closes: colons === undefined ? left.length + 1 : half + 1,
    opens: colons === undefined ? right.length + 1 : half + 1,
    double: pipes.length > 1,
  };
};

/** The token that starts with a bracket, bar line or colon. */
const marked = (source: TextLine, from: number): Token => {
  const { text } = source;
  const bar = at(barLines, text, from);
  if (bar !== null) return barLine(spotIn(source, from, bar[0].length), bar);
  const label = at(labelled, text, from);
  if (label !== null) {
    const name = (label[1] ?? label[2] ?? "").trim();
    const closed = label[1] !== undefined;
    return { ...spotIn(source, from, label[0].length), kind: "label", name, closed };
  }
  const ending = at(numbered, text, from);
  if (ending !== null) {
    const spot = spotIn(source, from, ending[0].length);
    return { ...spot, kind: "ending", text: ending[1] ?? "", after: "bracket" };
  }
  return { ...spotIn(source, from, 1), kind: "stray", text: text.charAt(from) };
};

/** Figures that touch the bar line before them; whether they are an ending is settled later. */
const figuresBehind = (source: TextLine, before: Token, from: number): EndingToken | null => {
  if (before.kind !== "barLine" || before.opens > 1) return null;
  const found = at(attached, source.text, from);
  if (found === null) return null;
  const after = before.closes > 1 ? "repeatEnd" : "barLine";
  return { ...spotIn(source, from, found[0].length), kind: "ending", text: found[0], after };
};

/**
 * Takes a line of bars (its comment already off) apart. Stops without a line end once there are
 * `most` tokens or one more.
 * @example tokensOf({ text: "G | C", offset: 0, line: 1 }).map((token) => token.kind) // => ["word", "barLine", "word", "lineEnd"]
 */
export const tokensOf = (
  source: TextLine,
  most: number = Number.POSITIVE_INFINITY,
): readonly Token[] => {
  const { text } = source;
  const tokens: Token[] = [];
  let from = 0;
  while (from < text.length) {
    if (tokens.length >= most) return tokens;
    const blank = at(space, text, from);
    const typed = blank === null ? at(word, text, from) : null;
    if (blank !== null) {
      from += blank[0].length;
    } else if (typed !== null) {
      const spot = spotIn(source, from, typed[0].length);
      tokens.push({ ...spot, kind: "word", text: typed[0], touching: false });
      from += typed[0].length;
    } else {
      const token = marked(source, from);
      const figures = figuresBehind(source, token, from + token.length);
      tokens.push(token, ...(figures === null ? [] : [figures]));
      from += token.length + (figures?.length ?? 0);
    }
  }
  tokens.push({ ...spotIn(source, text.length, 0), kind: "lineEnd" });
  return tokens;
};
