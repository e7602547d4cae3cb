import type { Diagnostic } from "../diagnostic.ts";
import type { Key } from "../harmony/key.ts";
import { words as wordTable } from "../wordTable.ts";
import { type ChordSymbol, readSymbol, type SymbolReading } from "./chordSymbol.ts";
import { type BarWords, layOut, type SectionLayout } from "./layout.ts";
import { notChords } from "./notChords.ts";
import { readBar } from "./readBar.ts";
import { settleEndings } from "./readEndings.ts";
import type { Meter, Stay } from "./song.ts";
import { errorAt, hintAt, spotIn, type TextLine } from "./spot.ts";
import { type Token, tokensOf } from "./tokens.ts";

/** A section with its bars read, before its repeats are settled. */
export type DraftSection = {
  readonly layout: SectionLayout;
  /** The stays of each bar of the layout. */
  readonly stays: readonly (readonly Stay[])[];
};

/** A chord symbol's place in the text. */
export type SymbolPlace = {
  /** Characters from the text's start. */
  readonly offset: number;
  readonly length: number;
  /** 0-based written bar. */
  readonly bar: number;
  readonly kind: ChordSymbol["kind"];
};

/** A chart's bars as read. */
export type BodyReading = {
  readonly sections: readonly DraftSection[];
  readonly symbols: readonly SymbolPlace[];
  readonly notes: readonly Diagnostic[];
};

/** Chords, bar lines and line ends of a chart; what comes behind is not read. */
const MAX_TOKENS = 100_000;

/** Symbols repeat a lot: each spelling is read once. */
const readingOnce = (key: Key): ((symbol: string) => SymbolReading) => {
  const known = new Map<string, SymbolReading>();
  return (symbol) => {
    const reading = known.get(symbol) ?? readSymbol(symbol, key);
    known.set(symbol, reading);
    return reading;
  };
};

/** A figure that touches a bar line before letters may be meant as an ending: worth a word. */
const doubtFigure = ({ words }: BarWords): Diagnostic | null => {
  const [first, ...rest] = words;
  if (first?.touching !== true || !rest.some((word) => /^[A-G]/.test(word.text))) return null;
  return hintAt(
    first,
    "figure-is-degree",
    wordTable.notes.figure.says(first.text.slice(0, 8)),
    wordTable.notes.figure.try,
  );
};

/** Reads lines of bars into sections, before repeats are settled. */
export const readBody = (
  lines: readonly TextLine[],
  { key, meter }: { readonly key: Key; readonly meter: Meter },
): BodyReading => {
  const notes: Diagnostic[] = [];
  const symbols: SymbolPlace[] = [];
  const read = readingOnce(key);
  const tokens: Token[] = [];
  for (const line of lines) {
    const found = tokensOf(line, MAX_TOKENS - tokens.length);
    const note = notChords(found, read);
    if (note === null) for (const token of found) tokens.push(token);
    else notes.push(note);
    const last = found.at(-1);
    if (last?.kind === "lineEnd") continue;
    const advice = wordTable.notes.tooLong.try;
    notes.push(
      errorAt(last ?? spotIn(line, 0, 1), "too-long", wordTable.notes.tooLong.says, advice),
    );
    break;
  }
  const layout = layOut(settleEndings(tokens));
  let before: readonly Stay[] | null = null;
  let written = 0;
  const sections: DraftSection[] = [];
  for (const section of layout.sections) {
    const stays: (readonly Stay[])[] = [];
    for (const bar of section.bars) {
      const content = readBar(bar.words, bar.end, { meter, before, read });
      const doubt = doubtFigure(bar);
      for (const note of content.notes) notes.push(note);
      if (doubt !== null) notes.push(doubt);
      for (const { offset, length, kind } of content.symbols) {
        symbols.push({ offset, length, kind, bar: written });
      }
      before = content.stays;
      stays.push(content.stays);
      written += 1;
    }
    sections.push({ layout: section, stays });
  }
  return { sections, symbols, notes: [...layout.notes, ...notes] };
};
