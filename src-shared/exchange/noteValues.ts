import type { Meter } from "../chart/song.ts";
import { ticksPerBar } from "../score/tempo.ts";
import { TICKS_PER_EIGHTH, TICKS_PER_QUARTER } from "../units.ts";

/** A written note value. */
export type NoteValue = {
  readonly ticks: number;
  /** As MusicXML names it. */
  readonly type: "whole" | "half" | "quarter" | "eighth" | "16th" | "32nd";
  readonly dots: 0 | 1;
};

/** The shortest value written, a thirty-second note, in ticks. */
export const SHORTEST_VALUE = 60;

const values: readonly NoteValue[] = [
  { ticks: 1920, type: "whole", dots: 0 },
  { ticks: 1440, type: "half", dots: 1 },
  { ticks: 960, type: "half", dots: 0 },
  { ticks: 720, type: "quarter", dots: 1 },
  { ticks: 480, type: "quarter", dots: 0 },
  { ticks: 240, type: "eighth", dots: 0 },
  { ticks: 120, type: "16th", dots: 0 },
  { ticks: SHORTEST_VALUE, type: "32nd", dots: 0 },
];

const DOTTED_QUARTER = 3 * TICKS_PER_EIGHTH;

/** Whether a value that starts there leaves the beats in sight, as a copyist would have it. */
const mayStart = (value: NoteValue, at: number, meter: Meter): boolean => {
  const bar = ticksPerBar(meter);
  if (value.ticks <= TICKS_PER_EIGHTH) {
    return at % value.ticks === 0;
  }
  if (meter.unit === 8) {
    if (value.ticks === TICKS_PER_QUARTER) {
      return at % DOTTED_QUARTER <= TICKS_PER_EIGHTH && at % TICKS_PER_EIGHTH === 0;
    }
    return value.dots === 1 && at % value.ticks === 0;
  }
  if (value.ticks === TICKS_PER_QUARTER) {
    return at % TICKS_PER_QUARTER === 0;
  }
  const half = bar === 4 * TICKS_PER_QUARTER ? bar / 2 : TICKS_PER_QUARTER;
  return value.ticks < 3 * TICKS_PER_QUARTER ? at % half === 0 : at === 0;
};

/**
 * A stretch of a bar as written values, to be tied where they are several: `at` ticks from the bar
 * line, both it and `length` multiples of SHORTEST_VALUE within the bar.
 * @example noteValues(240, 480, { beats: 4, unit: 4 }).map((value) => value.type) // => ["eighth", "eighth"]
 */
export const noteValues = (at: number, length: number, meter: Meter): readonly NoteValue[] => {
  const found: NoteValue[] = [];
  let from = at;
  const end = at + length;
  while (from < end) {
    const start = from;
    const value = values.find((each) => start + each.ticks <= end && mayStart(each, start, meter));
    if (value === undefined) {
      throw new RangeError(`no note value for ${end - start} ticks at ${start} of a bar`);
    }
    found.push(value);
    from += value.ticks;
  }
  return found;
};
