import { eighthsOfMeter } from "../roll/beats.ts";
import { fingersAt, voicedStrings } from "../roll/editPattern.ts";
import type { Pattern, PickFinger, VoicedString } from "../roll/pattern.ts";
import type { Breach } from "../roll/rollRules.ts";
import { words } from "../wordTable.ts";

/**
 * A right-hand finger by its name.
 * @example sayFinger("I") // => "index"
 */
export const sayFinger = (finger: PickFinger): string => words.bench.fingers[finger];

/**
 * A string of a voicing as a player calls it.
 * @example saySome("fifth") // => "5th string"
 */
export const saySome = (on: VoicedString): string =>
  on === "fifth" ? words.bench.fifthString : words.bench.stringNumber(on);

const theFinger = (finger: PickFinger | undefined): string => words.bench.theFinger[finger ?? "T"];

/** What a breach is, in one sentence; eighths count from 1. */
export const sayBreach = (breach: Breach, pattern: Pattern): string => {
  const { rule, finger } = breach;
  const eighth = breach.eighth + 1;
  switch (rule) {
    case "finger-twice":
      return words.bench.breach.twice(theFinger(finger), eighth - 1, eighth);
    case "starts-off-thumb":
      return words.bench.breach.startsOffThumb;
    case "ends-on-thumb":
      return words.bench.breach.endsOnThumb(eighth);
    case "out-of-reach":
      return words.bench.breach.offString(
        theFinger(finger),
        eighth,
        words.bench.fingerStrings[finger ?? "T"],
      );
    case "not-one-stroke":
      return finger === undefined
        ? words.bench.breach.cross(eighth)
        : words.bench.breach.apart(theFinger(finger), eighth);
    case "empty":
      return words.bench.breach.empty;
    case "wrong-length":
      return words.bench.breach.length(
        pattern.strokes.length,
        pattern.meter,
        eighthsOfMeter[pattern.meter],
      );
  }
};

const sayStroke = (pattern: Pattern, eighth: number): string => {
  const picks = voicedStrings
    .toReversed()
    .flatMap((on) =>
      fingersAt(pattern, eighth, on).map((finger) =>
        words.bench.fingerOn(sayFinger(finger), saySome(on)),
      ),
    );
  return picks.length === 0 ? words.bench.rest : picks.join(", ");
};

/**
 * What mending does to a pattern, in a few words: "eighth 4: middle on string 1". "" where nothing
 * changes.
 */
export const sayMend = (before: Pattern, after: Pattern): string => {
  const longer = after.strokes.length - before.strokes.length;
  const changed = after.strokes.flatMap((stroke, eighth) => {
    const old = before.strokes[eighth];
    return old && JSON.stringify(old.picks) !== JSON.stringify(stroke.picks)
      ? [words.bench.stroke(eighth + 1, sayStroke(after, eighth))]
      : [];
  });
  const count = Math.abs(longer);
  const length =
    longer === 0 ? [] : [longer > 0 ? words.bench.restAdded(count) : words.bench.cut(count)];
  return [...changed, ...length].join("; ");
};
