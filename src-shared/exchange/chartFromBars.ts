import { silence } from "../chart/chordSymbol.ts";
import { eighthsIn } from "../chart/pulse.ts";
import { readChart } from "../chart/readChart.ts";
import { plainHeader } from "../chart/readHeader.ts";
import { repeatGroup } from "../chart/repeatGroup.ts";
import type { Bar, Section, Song, Stay } from "../chart/song.ts";
import { writeChart } from "../chart/writeChart.ts";
import { refuse } from "../harmony/refusal.ts";
import { ticksPerBar } from "../score/tempo.ts";
import { TICKS_PER_EIGHTH } from "../units.ts";
import { words } from "../wordTable.ts";
import { fullBars } from "./fullBars.ts";
import type { FoundTune } from "./importing.ts";
import type { Piece } from "./piece.ts";

/** A song's header as a file has it; what it does not say has the usual value. */
export type FoundHeader = Omit<Song, "sections">;

const MAX_LABEL = 32;
const MOST_BARS = 5000;

/**
 * A label as a chart can hold it: one word of letters, figures and hyphens, not starting with a
 * figure; null where nothing is left.
 * @example chartLabel("2nd time") // => "Part-2nd-time"
 */
export const chartLabel = (text: string): string | null => {
  const word = text.replace(/[^\p{L}\d]+/gu, "-").replace(/^-+/, "");
  const safe = /^\d/.test(word) ? `Part-${word}` : word;
  return safe.slice(0, MAX_LABEL).replace(/-+$/, "") || null;
};

type Placed = { readonly eighth: number; readonly symbol: string };

/** Chords where they fall on eighths; of two on one eighth the later stands. */
const onEighths = (piece: Piece, eighths: number): readonly Placed[] => {
  const placed = new Map<number, string>();
  for (const { at, symbol } of piece.symbols) {
    placed.set(Math.min(eighths - 1, Math.round(at / TICKS_PER_EIGHTH)), symbol);
  }
  return [...placed]
    .map(([eighth, symbol]) => ({ eighth, symbol }))
    .toSorted((a, b) => a.eighth - b.eighth);
};

const staysOf = (placed: readonly Placed[], held: string, eighths: number): readonly Stay[] => {
  const all = placed[0]?.eighth === 0 ? placed : [{ eighth: 0, symbol: held }, ...placed];
  const heard = all.filter(({ symbol }, index) => symbol !== all[index - 1]?.symbol);
  return heard.map(({ eighth, symbol }, index) => ({
    symbol,
    // The chart's own reader says what sounds.
    chord: null,
    eighths: (heard[index + 1]?.eighth ?? eighths) - eighth,
  }));
};

/** A repeat that nothing closes is played once; a file's opening sign alone says no more. */
const withoutOpenRepeats = (bars: readonly Bar[]): readonly Bar[] =>
  bars.map((bar, index) =>
    bar.opensRepeat && repeatGroup(bars, index) === null ? { ...bar, opensRepeat: false } : bar,
  );

/**
 * A song as canonical chart text, from what a file has between its bar lines, with what was done to
 * make it one; `read` and `left` come before that.
 */
export const chartFromBars = (
  header: FoundHeader,
  pieces: readonly Piece[],
  read: readonly string[],
  left: readonly string[],
): FoundTune => {
  if (pieces.length === 0) {
    const says = words.import.noBars;
    return { ...refuse(says, words.import.noBarsTry), title: header.title };
  }
  if (pieces.length > MOST_BARS) {
    const says = words.import.tooManyBars(pieces.length);
    return { ...refuse(says, words.import.divide(MOST_BARS)), title: header.title };
  }
  const { bars, said } = fullBars(pieces, ticksPerBar(header.meter));
  const eighths = eighthsIn(header.meter);
  const sections: { readonly label: string | null; readonly bars: Bar[] }[] = [];
  let held = silence.symbol;
  let rounded = 0;
  for (const piece of bars) {
    const placed = onEighths(piece, eighths);
    rounded += piece.symbols.filter(({ at }) => {
      const off = Math.abs(at - Math.round(at / TICKS_PER_EIGHTH) * TICKS_PER_EIGHTH);
      return off >= 1;
    }).length;
    const { opensRepeat, plays, ending, endsEnding } = piece;
    if (piece.label !== null || sections.length === 0) {
      sections.push({ label: piece.label, bars: [] });
    }
    const stays = staysOf(placed, held, eighths);
    held = stays.at(-1)?.symbol ?? held;
    sections.at(-1)?.bars.push({ stays, opensRepeat, plays, ending, endsEnding });
  }
  const settled: readonly Section[] = sections.map((section) => ({
    ...section,
    bars: withoutOpenRepeats(section.bars),
  }));
  const title = header.title || plainHeader.title;
  // A part may have been a pick-up alone.
  const form = header.form?.filter((name) => settled.some(({ label }) => label === name)) ?? [];
  const reading = readChart(
    writeChart({
      ...header,
      title,
      form: form.length > 0 ? form : null,
      sections: settled,
    }),
  );
  return {
    ok: true,
    title: reading.value.title,
    chart: writeChart(reading.value),
    read: [words.import.bars(bars.length), ...read],
    left: [
      ...left,
      ...said,
      ...(rounded > 0 ? [words.import.rounded(rounded)] : []),
      ...reading.notes
        .filter((note) => note.severity === "error")
        .map((note) => `${note.says} ${note.try}`),
    ],
  };
};
