import type { Meter, TimedBar } from "../chart/song.ts";
import type { Note } from "../score/score.ts";
import { type NoteValue, noteValues, SHORTEST_VALUE } from "./noteValues.ts";

/** One written value of a bar: notes struck together, a tied rest of them, or silence. */
export type WrittenStroke = {
  /** Ticks from the bar line. */
  readonly at: number;
  readonly value: NoteValue;
  /** Empty for a rest. */
  readonly notes: readonly Note[];
  /** Tied to the value before and behind; never for a rest. */
  readonly tiedFrom: boolean;
  readonly tiedTo: boolean;
};

type Stroke = { readonly from: number; readonly to: number; readonly notes: readonly Note[] };

const onGrid = (ticks: number): number => Math.round(ticks / SHORTEST_VALUE) * SHORTEST_VALUE;

/** Notes struck together, each as long as written but no longer than to the next stroke. */
const strokesOf = (notes: readonly Note[]): readonly Stroke[] => {
  const together = new Map<number, Note[]>();
  for (const note of notes) {
    const from = onGrid(note.tick);
    const known = together.get(from);
    if (known === undefined) {
      together.set(from, [note]);
    } else {
      known.push(note);
    }
  }
  const starts = [...together.keys()].toSorted((a, b) => a - b);
  return starts.map((from, index) => {
    const own = together.get(from) ?? [];
    const longest = Math.max(SHORTEST_VALUE, ...own.map((note) => onGrid(note.ticks)));
    const next = starts[index + 1] ?? Number.POSITIVE_INFINITY;
    return { from, to: Math.min(next, from + longest), notes: own };
  });
};

/**
 * Notes as they are written, bar by bar: values that fill every bar, tied over bar lines and where
 * one value does not do, rests between.
 */
export const strokesInBars = (
  notes: readonly Note[],
  bars: readonly TimedBar[],
  meter: Meter,
): readonly (readonly WrittenStroke[])[] => {
  const strokes = strokesOf(notes);
  let next = 0;
  let sounding: Stroke | null = null;
  return bars.map((bar) => {
    const end = bar.start + bar.length;
    const written: WrittenStroke[] = [];
    const write = (from: number, to: number, stroke: Stroke | null): void => {
      let at = from - bar.start;
      for (const value of noteValues(at, to - from, meter)) {
        written.push({
          at,
          value,
          notes: stroke?.notes ?? [],
          tiedFrom: stroke !== null && bar.start + at > stroke.from,
          tiedTo: stroke !== null && bar.start + at + value.ticks < stroke.to,
        });
        at += value.ticks;
      }
    };
    let at: number = bar.start;
    while (at < end) {
      const stroke: Stroke | undefined = strokes[next];
      if (sounding === null && stroke !== undefined && stroke.from <= at) {
        sounding = stroke;
        next += 1;
      }
      const to: number = Math.min(end, sounding?.to ?? stroke?.from ?? end);
      write(at, to, sounding);
      if (sounding !== null && sounding.to <= to) {
        sounding = null;
      }
      at = to;
    }
    return written;
  });
};
