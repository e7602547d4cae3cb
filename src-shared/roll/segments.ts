import { eighthsOfMeter } from "./beats.ts";
import type { PatternMeter } from "./pattern.ts";

/** Where a stay lies, in eighth notes: `offset` counts from the bar line before its start. */
export type StayShape = {
  readonly offset: number;
  readonly length: number;
  readonly meter: PatternMeter;
};

/** A part of a stay: where it starts, from the stay's start, and how long it is, in eighths. */
export type Segment = { readonly start: number; readonly length: number };

/** Where an eighth of a stay lies in its bar. */
export const inBar = ({ offset, meter }: StayShape, eighth: number): number =>
  (offset + eighth) % eighthsOfMeter[meter];

/**
 * A stay cut at its bar lines. A bar line one eighth from either end cuts nothing: a thumb cannot
 * strike twice running, so that a single eighth belongs to the measure beside it.
 * @example segmentsOf({ offset: 4, length: 13, meter: "4/4" }).map(({ length }) => length) // => [4, 9]
 */
export const segmentsOf = (stay: StayShape): readonly Segment[] => {
  const { length, meter } = stay;
  if (!(Number.isInteger(length) && length >= 1)) {
    throw new Error(`a stay of ${length} eighths; it lasts at least 1, and whole ones`);
  }
  const measure = eighthsOfMeter[meter];
  const first = measure - inBar(stay, 0);
  const cuts = [0];
  for (let line = first; line < length - 1; line += measure) {
    if (line > 1) {
      cuts.push(line);
    }
  }
  return cuts.map((start, index) => ({ start, length: (cuts[index + 1] ?? length) - start }));
};

/** Whether a segment is one measure from bar line to bar line. */
export const isMeasure = (stay: StayShape, { start, length }: Segment): boolean =>
  length === eighthsOfMeter[stay.meter] && inBar(stay, start) === 0;
