import type { Diagnostic, Read } from "../diagnostic.ts";
import { words as wordTable } from "../wordTable.ts";
import { chartLine, fieldsOf } from "./fields.ts";
import type { BarWords, SectionLayout } from "./layout.ts";
import { MAX_BARS, playOrder } from "./playOrder.ts";
import { readBody, type SymbolPlace } from "./readBody.ts";
import { readForm } from "./readForm.ts";
import { readHeader } from "./readHeader.ts";
import { readRepeats } from "./readRepeats.ts";
import type { Section, Song } from "./song.ts";
import { errorAt, textLines } from "./spot.ts";

/** Where a written bar stands in the text: from its first word up to the end of its last. */
export type BarText = {
  /** Characters from the text's start; `end` is behind the bar's last character. */
  readonly start: number;
  readonly end: number;
  /** Where it starts, both counted from 1. */
  readonly line: number;
  readonly column: number;
};

/** A chart as read, and where its bars and chord symbols stand in the text. */
export type ChartReading = Read<Song> & {
  /** One for each written bar, over all sections; `TimedBar.written` is an index into it. */
  readonly bars: readonly BarText[];
  /** Every chord symbol that was understood, in the order of the text. */
  readonly symbols: readonly SymbolPlace[];
};

/** Further notes are counted, not listed. */
const MAX_NOTES = 200;

const inOrder = (notes: readonly Diagnostic[]): readonly Diagnostic[] => {
  const sorted = notes.toSorted((a, b) => a.at.line - b.at.line || a.at.column - b.at.column);
  const first = sorted[MAX_NOTES - 1];
  if (sorted.length <= MAX_NOTES || first === undefined) return sorted;
  const more = sorted.length - (MAX_NOTES - 1);
  return [
    ...sorted.slice(0, MAX_NOTES - 1),
    {
      severity: "error",
      code: "too-many-notes",
      at: first.at,
      says: wordTable.notes.tooMany.says(more),
      try: wordTable.notes.tooMany.try,
    },
  ];
};

const checkSections = (sections: readonly SectionLayout[]): readonly Diagnostic[] =>
  sections.flatMap((section) =>
    section.bars.length > 0 || section.label === null
      ? []
      : [
          errorAt(
            section.label.spot,
            "empty-section",
            wordTable.notes.emptySection.says(section.label.name),
            wordTable.notes.emptySection.try,
          ),
        ],
  );

const barText = ({ words, end }: BarWords): BarText => {
  const first = words[0] ?? end;
  const last = words.at(-1) ?? end;
  const { offset: start, line, column } = first;
  return { start, end: last.offset + last.length, line, column };
};

/**
 * Reads a chart. Whatever the text, the song is whole (stays fill every bar) and each thing that
 * was not understood is noted with its place and a way out. Never throws.
 *
 * Header: `Title: Key: Time: Tempo: Capo: Tuning: Form:`, one a line or several. Sections: `[Verse]`.
 * Bars between `|`, outer ones may be left out; a line's end ends a bar. `#` at a line's start or
 * behind white space starts a remark, unless it touches a figure (`#4dim`).
 * In a bar: chords by letter (`Em7/B`) or degree (`6m`, `5-7`), or `N.C.`, share the bar evenly; or
 * counted in quarters, in 2/2 too: `.` one more, `,` half of one more, `'` makes a chord half of one;
 * in 6/8 and 9/8 in eighths, six or nine to a bar, and there is nothing shorter.
 * A dot at a bar's start holds the chord of the bar before; `%` is the bar before.
 * Repeats `|:` `:|` `::` `::|` (three times), endings `[1` `[2` `[1,3` `[1-3`. A figure that touches
 * a bar line, `|1`, is an ending only where its section has an attached `:|2` (or `[2`) later; else,
 * and always behind white space, it is a degree.
 * @example readChart("G | C | D . G .").value.sections[0]?.bars.length // => 3
 */
export const readChart = (text: string): ChartReading => {
  const lines = textLines(text).map(chartLine);
  const fields = lines
    .filter((each) => each.kind === "fields")
    .flatMap(({ line }) => fieldsOf(line));
  const { header, form: formField, notes } = readHeader(fields);
  const body = readBody(
    lines.filter((each) => each.kind === "body").map(({ line }) => line),
    header,
  );
  const drafts = body.sections.filter((section) => section.stays.length > 0);
  const layouts = body.sections.map((section) => section.layout);
  const repeats = drafts.map(readRepeats);
  const { form, notes: formNotes } = readForm(
    formField,
    drafts.map((draft) => draft.layout),
  );
  const sections: readonly Section[] = drafts.map((draft, index) => ({
    label: draft.layout.label?.name ?? null,
    bars: repeats[index]?.bars ?? [],
  }));
  const song: Song = { ...header, form, sections };
  const places = drafts.flatMap((draft) => draft.layout.bars);
  const played = playOrder(song);
  const lastPlayed = places[played.bars.at(-1)?.written ?? -1];
  const cut =
    played.cut && lastPlayed !== undefined
      ? [
          errorAt(
            lastPlayed.end,
            "too-long",
            wordTable.notes.cut.says(MAX_BARS),
            wordTable.notes.cut.try,
          ),
        ]
      : [];
  return {
    value: song,
    notes: inOrder([
      ...notes,
      ...body.notes,
      ...checkSections(layouts),
      ...repeats.flatMap((each) => each.notes),
      ...formNotes,
      ...cut,
    ]),
    bars: places.map(barText),
    symbols: body.symbols,
  };
};
