import type { Roll } from "./roll.ts";
import { cells, oneMeasureRoll, pinch, twoMeasureRoll, waltzRoll } from "./rollTable.ts";

/** Where a stay lies, in eighth notes: `offset` counts from the bar line before its start. */
export type StayShape = {
  readonly offset: number;
  readonly length: number;
  readonly eighthsPerBar: number;
};

const cell = (length: number): Roll => {
  const roll = cells.get(length);
  if (!roll) {
    throw new Error(`no cell of ${length} eighths; there are cells of 2 to 10`);
  }
  return roll;
};

/** Whole measures: twos first, then the one (three measures = two + one). */
const measures = (count: number, eighthsPerBar: number): readonly Roll[] => {
  if (eighthsPerBar === 8) {
    const pairs = Array.from({ length: Math.floor(count / 2) }, () => twoMeasureRoll);
    return count % 2 === 1 ? [...pairs, oneMeasureRoll] : pairs;
  }
  if (eighthsPerBar === 6) {
    return Array.from({ length: count }, () => waltzRoll);
  }
  return Array.from({ length: count }, () => cell(eighthsPerBar));
};

/**
 * A chain of rolls that fills a stay exactly, thumb first at its start and, where it can, at each
 * bar line: the part up to the first bar line, whole measures, the part after the last bar line. A
 * part of a single eighth joins the measure beside it, since a thumb cannot strike twice running;
 * a stay of a single eighth becomes a pinch. Measures of 4, 6 or 8 eighths (2/4, 3/4, 4/4, 2/2).
 * @example fitRolls({ offset: 0, length: 24, eighthsPerBar: 8 }).map((roll) => roll.strokes.length) // => [16, 8]
 */
export const fitRolls = (stay: StayShape): readonly Roll[] => {
  const { offset, length, eighthsPerBar } = stay;
  if (length < 1) {
    throw new Error(`a stay of ${length} eighths; it lasts at least 1`);
  }
  if (length === 1) {
    return [pinch];
  }
  const toBarLine = (eighthsPerBar - (offset % eighthsPerBar)) % eighthsPerBar;
  let head = Math.min(toBarLine, length);
  let whole = Math.floor((length - head) / eighthsPerBar);
  let tail = length - head - whole * eighthsPerBar;
  if (head === 1 && whole > 0) {
    head += eighthsPerBar;
    whole -= 1;
  } else if (head === 1) {
    head += tail;
    tail = 0;
  }
  if (tail === 1 && whole > 0) {
    tail += eighthsPerBar;
    whole -= 1;
  } else if (tail === 1) {
    head += tail;
    tail = 0;
  }
  return [
    ...(head > 0 ? [cell(head)] : []),
    ...measures(whole, eighthsPerBar),
    ...(tail > 0 ? [cell(tail)] : []),
  ];
};
