import * as v from "valibot";

/** A right-hand finger: thumb, index, middle. */
export type PickFinger = "T" | "I" | "M";

/**
 * A string as a voicing has it: 1 its highest, then 2 and 3, and 4 its lowest where it has four (3
 * where it has three); "fifth" is the open fifth string.
 */
export type VoicedString = 1 | 2 | 3 | 4 | "fifth";

/** One finger on one string of whatever voicing is held. */
export type PatternPick = {
  readonly finger: PickFinger;
  readonly on: VoicedString;
};

/** What the right hand does on one eighth: one pick, several together (a pinch), or none (a rest). */
export type PatternStroke = {
  readonly picks: readonly PatternPick[];
  readonly accent: boolean;
  /** Stopped at once by the left hand, as the pinch of a vamp is. */
  readonly damped: boolean;
};

/** The meters that patterns are written for; 2/2 takes those of 4/4. */
export type PatternMeter = "4/4" | "3/4" | "2/4" | "6/8" | "9/8";

/** A right-hand pattern: one stroke for each eighth note, of part of a measure, one, or several. */
export type Pattern = {
  readonly name: string;
  readonly meter: PatternMeter;
  readonly strokes: readonly PatternStroke[];
};

/** All meters of patterns, the commonest first. */
export const patternMeters: readonly PatternMeter[] = ["4/4", "3/4", "2/4", "6/8", "9/8"];

/** The longest pattern: four measures of 4/4, in eighths. */
export const MOST_EIGHTHS = 32;

const pick = v.object({
  finger: v.picklist(["T", "I", "M"]),
  on: v.picklist([1, 2, 3, 4, "fifth"]),
});

const stroke = v.object({
  picks: v.pipe(v.array(pick), v.maxLength(5)),
  accent: v.boolean(),
  damped: v.boolean(),
});

/** Checks a pattern as it comes from a file or over the wire. */
export const patternSchema: v.GenericSchema<unknown, Pattern> = v.object({
  name: v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(60)),
  meter: v.picklist(patternMeters),
  strokes: v.pipe(v.array(stroke), v.minLength(1), v.maxLength(MOST_EIGHTHS)),
});
