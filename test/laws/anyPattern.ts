import fc from "fast-check";
import { voicedStrings } from "../../src-shared/roll/editPattern.ts";
import {
  MOST_EIGHTHS,
  type Pattern,
  type PatternStroke,
  patternMeters,
} from "../../src-shared/roll/pattern.ts";

const anyPick = fc.record({
  finger: fc.constantFrom("T" as const, "I" as const, "M" as const),
  on: fc.constantFrom(...voicedStrings),
});

/** One eighth of any pattern: most have one pick or none. */
export const anyStroke: fc.Arbitrary<PatternStroke> = fc.record({
  picks: fc.oneof(
    { weight: 4, arbitrary: fc.array(anyPick, { maxLength: 1 }) },
    { weight: 1, arbitrary: fc.array(anyPick, { maxLength: 5 }) },
  ),
  accent: fc.boolean(),
  damped: fc.boolean(),
});

/** A name as it is kept: 1 to 60 characters without spaces round it. */
export const anyPatternName: fc.Arbitrary<string> = fc
  .string({ minLength: 1, maxLength: 60 })
  .map((name) => name.trim())
  .filter((name) => name.length > 0);

/** Any pattern that can be kept, whatever rules it breaks. */
export const anyPattern: fc.Arbitrary<Pattern> = fc.record({
  name: anyPatternName,
  meter: fc.constantFrom(...patternMeters),
  strokes: fc.array(anyStroke, { minLength: 1, maxLength: MOST_EIGHTHS }),
});
