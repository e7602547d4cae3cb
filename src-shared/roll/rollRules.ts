import type { Roll, Stroke } from "./roll.ts";

/** A rule that a pattern breaks, and the 0-based eighth where it does. */
export type Breach = {
  readonly rule: "finger-twice" | "starts-off-thumb" | "ends-on-thumb";
  readonly eighth: number;
};

const shareFinger = (a: Stroke, b: Stroke): boolean =>
  a.some((pick) => b.some((other) => other.finger === pick.finger));

/**
 * The eighths at which a finger would have to strike twice running. Strokes given in order; a
 * silent eighth between two strokes frees every finger.
 */
export const fingersTwice = (strokes: readonly Stroke[]): readonly number[] =>
  strokes.flatMap((stroke, eighth) => {
    const before = strokes[eighth - 1];
    return before && shareFinger(before, stroke) ? [eighth] : [];
  });

/**
 * What keeps a roll from being played and joined to any other: no finger twice running, the first
 * stroke with the thumb, the last one without it. Common practice, no published source.
 */
export const breachesOf = (roll: Roll): readonly Breach[] => {
  const twice = fingersTwice(roll.strokes).map(
    (eighth): Breach => ({ rule: "finger-twice", eighth }),
  );
  const first = roll.strokes[0] ?? [];
  const last = roll.strokes.at(-1) ?? [];
  const starts: readonly Breach[] = first.some((pick) => pick.finger === "T")
    ? []
    : [{ rule: "starts-off-thumb", eighth: 0 }];
  const ends: readonly Breach[] = last.some((pick) => pick.finger === "T")
    ? [{ rule: "ends-on-thumb", eighth: roll.strokes.length - 1 }]
    : [];
  return [...twice, ...starts, ...ends];
};
