import { readSymbol } from "../chart/chordSymbol.ts";
import { readChart } from "../chart/readChart.ts";
import { plainHeader } from "../chart/readHeader.ts";
import { writeChart } from "../chart/writeChart.ts";
import { refuse } from "../harmony/refusal.ts";
import { words as wordTable } from "../wordTable.ts";
import type { Importing } from "./importing.ts";

const MAX_TEXT = 200_000;
const MAX_SHOWN = 5;

/** No chord symbol is longer. */
const LONGEST_SYMBOL = 32;
const MOST_CHORDS = 5000;
const MOST_BAR_LINES = 10_000;
const MOST_WORDS = 20_000;

/** Words between spaces and commas; a dash between two of them belongs to neither. */
const words = (line: string): readonly string[] =>
  line.split(/[\s,]+/).map((word) => {
    const isLong = word.length > LONGEST_SYMBOL;
    return isLong && !/^[–-]*$/.test(word) ? word : word.replace(/^[–-]+|[–-]+$/g, "");
  });

const isChord = (word: string): boolean =>
  word.length <= LONGEST_SYMBOL && readSymbol(word, plainHeader.key).ok;

/** A line of chords alone; words such as "A" count only where every word of the line is one. */
const chordsOf = (line: string): readonly string[] | null => {
  const found = words(line).filter((word) => word !== "");
  return found.length > 0 && found.every(isChord) ? found : null;
};

const isChart = (text: string): boolean =>
  /\|/.test(text) || /^\s*(?:title|key|time|tempo|capo|tuning|form):/im.test(text);

/**
 * Reads text from the clipboard: a chart as it is, or plain lines of chords ("G  C  D"), one bar to
 * a chord; lines with other words, such as lyrics, are left.
 */
export const readPasted = (text: string): Importing => {
  if (text.length > MAX_TEXT) {
    return refuse(wordTable.import.text.tooLong, wordTable.import.text.tooLongTry);
  }
  if (isChart(text)) {
    const lines = text.split("|").length - 1;
    if (lines > MOST_BAR_LINES) {
      return refuse(wordTable.import.text.manyBars(lines), wordTable.import.text.tooLongTry);
    }
    const { value, notes } = readChart(text);
    const bars = value.sections.reduce((sum, section) => sum + section.bars.length, 0);
    if (bars === 0) {
      return refuse(wordTable.import.text.noBars, wordTable.import.text.noBarsTry);
    }
    const left = notes
      .filter((note) => note.severity === "error")
      .map((note) => wordTable.import.text.line(note.at.line, note.says, note.try));
    // As pasted, not as understood: nothing of it is lost, and the chart's own marks show the rest.
    const chart = text.endsWith("\n") ? text : `${text}\n`;
    return {
      ok: true,
      tunes: [{ ok: true, title: value.title, chart, read: [wordTable.import.bars(bars)], left }],
    };
  }
  if (text.split(/\s+/, MOST_WORDS + 1).length > MOST_WORDS) {
    return refuse(wordTable.import.text.manyWords(MOST_WORDS), wordTable.import.text.tooLongTry);
  }
  const lines = text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== "");
  const rows = lines.map((line) => ({ line, chords: chordsOf(line) }));
  const chords = rows.flatMap((row) => row.chords ?? []);
  if (chords.length === 0) {
    return refuse(wordTable.import.text.noChords, wordTable.import.text.noChordsTry);
  }
  if (chords.length > MOST_CHORDS) {
    const says = wordTable.import.text.manyChords(chords.length);
    return refuse(says, wordTable.import.text.manyChordsTry(MOST_CHORDS));
  }
  const body = rows.flatMap((row) => (row.chords ? [`| ${row.chords.join(" | ")} |`] : []));
  const others = rows.filter((row) => row.chords === null).map((row) => row.line.trim());
  const shown = others
    .slice(0, MAX_SHOWN)
    .map((line) => wordTable.import.text.lineLeft(line.slice(0, 60)));
  const more = others.length - shown.length;
  return {
    ok: true,
    tunes: [
      {
        ok: true,
        title: plainHeader.title,
        chart: writeChart(readChart(body.join("\n")).value),
        read: [wordTable.import.text.oneBarEach(chords.length)],
        left: [...shown, ...(more > 0 ? [wordTable.import.text.moreLines(more)] : [])],
      },
    ],
  };
};
