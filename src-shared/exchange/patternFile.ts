import * as v from "valibot";
import { parseJson } from "../parseJson.ts";
import { freeName } from "../roll/editPattern.ts";
import { type Pattern, patternSchema } from "../roll/pattern.ts";
import { words } from "../wordTable.ts";

/** Why a file of patterns cannot be read: what is wrong and where, and what to do. */
export type PatternFileRefusal = { readonly says: string; readonly try: string };

/** What a file of patterns holds, or why it cannot be read. */
export type PatternFileReading =
  | { readonly ok: true; readonly patterns: readonly Pattern[] }
  | { readonly ok: false; readonly problem: PatternFileRefusal };

/** A file of patterns has at most this many characters. */
export const MOST_FILE_CHARACTERS = 2_000_000;

const marked = v.looseObject({ shortslidePatterns: v.unknown() });
const fileSchema = v.object({
  shortslidePatterns: v.literal(1),
  patterns: v.pipe(v.array(patternSchema), v.minLength(1), v.maxLength(500)),
});

/** A file with these patterns: JSON, with a line end after it. */
export const patternFileOf = (patterns: readonly Pattern[]): string =>
  `${JSON.stringify({ shortslidePatterns: 1, patterns }, null, 2)}\n`;

const refuse = (says: string, advice: string): PatternFileReading => ({
  ok: false,
  problem: { says, try: advice },
});

const nameOf = (parsed: unknown, index: number): string | null => {
  const named = v.safeParse(v.object({ patterns: v.array(v.unknown()) }), parsed);
  const one = named.success ? named.output.patterns[index] : undefined;
  const name = v.safeParse(v.object({ name: v.pipe(v.string(), v.trim(), v.minLength(1)) }), one);
  return name.success ? name.output.name.slice(0, 60) : null;
};

/** In words: where in the file an entry stands. */
const sayWhere = (path: readonly unknown[], parsed: unknown): string => {
  const [list, pattern, field, stroke, part, pick, which] = path;
  if (list !== "patterns" || typeof pattern !== "number") {
    return words.bench.inFile.list;
  }
  const where = words.bench.inFile.nth(pattern + 1, nameOf(parsed, pattern));
  if (field === "strokes" && typeof stroke === "number") {
    const at =
      typeof pick === "number"
        ? words.bench.inFile.pick(where, stroke + 1, pick + 1)
        : words.bench.inFile.eighth(where, stroke + 1);
    const entry = which ?? part;
    return entry === undefined ? at : words.bench.inFile.entry(at, `${entry}`);
  }
  return field === undefined ? where : words.bench.inFile.entry(where, `${field}`);
};

const wanted: Readonly<Record<string, string>> = {
  name: words.bench.inFile.wanted.name,
  meter: words.bench.inFile.wanted.meter,
  strokes: words.bench.inFile.wanted.strokes,
  picks: words.bench.inFile.wanted.picks,
  finger: words.bench.inFile.wanted.finger,
  on: words.bench.inFile.wanted.on,
  accent: words.bench.inFile.wanted.trueOrFalse,
  damped: words.bench.inFile.wanted.trueOrFalse,
  patterns: words.bench.inFile.wanted.patterns,
};

/**
 * Reads a file of patterns, all of it or nothing: any text gives the patterns or a refusal that says
 * what is wrong, where, and what to do. Rules of the hand are not looked at.
 */
export const readPatternFile = (text: string): PatternFileReading => {
  const another = words.bench.inFile.notPatterns;
  if (text.length > MOST_FILE_CHARACTERS) {
    return refuse(words.bench.inFile.tooLarge, another);
  }
  const parsed = parseJson(text.replace(/^\uFEFF/, ""));
  if (parsed === undefined) {
    return refuse(words.bench.inFile.notJson, another);
  }
  const mark = v.safeParse(marked, parsed);
  if (!mark.success) {
    return refuse(words.bench.inFile.noPatterns, another);
  }
  if (mark.output.shortslidePatterns !== 1) {
    return refuse(words.bench.inFile.later, words.bench.inFile.laterTry);
  }
  const read = v.safeParse(fileSchema, parsed);
  if (read.success) {
    return { ok: true, patterns: read.output.patterns };
  }
  const path = read.issues[0].path?.map(({ key }) => key) ?? [];
  const last = path.findLast((key) => typeof key === "string");
  return refuse(
    words.bench.inFile.wrong(sayWhere(path, parsed)),
    words.bench.inFile.mustBe(wanted[String(last)] ?? words.bench.inFile.pattern),
  );
};

/** Patterns taken in beside those that were there, and which got another name for it. */
export type TakenIn = {
  readonly patterns: readonly Pattern[];
  readonly renamed: readonly { readonly from: string; readonly to: string }[];
  /** Those that were there already, note for note and under the same name; not taken in again. */
  readonly known: number;
};

/** The same text for the same pattern, in whatever order its parts were put together. */
const spelled = (pattern: Pattern): string => JSON.stringify(v.parse(patternSchema, pattern));

/** One's own patterns with others behind them, each name once: a second "X" is kept as "X 2". */
export const takenIn = (own: readonly Pattern[], others: readonly Pattern[]): TakenIn => {
  const patterns = [...own];
  const renamed: { readonly from: string; readonly to: string }[] = [];
  let known = 0;
  for (const other of others) {
    const same = patterns.find(({ name }) => name === other.name);
    if (same && spelled(same) === spelled(other)) {
      known += 1;
      continue;
    }
    const to = freeName(
      other.name,
      patterns.map(({ name }) => name),
    );
    patterns.push({ ...other, name: to });
    if (to !== other.name) {
      renamed.push({ from: other.name, to });
    }
  }
  return { patterns, renamed, known };
};
