import { eighthsOfMeter } from "../roll/beats.ts";
import { fingersAt, voicedStrings } from "../roll/editPattern.ts";
import type { Pattern, PickFinger, VoicedString } from "../roll/pattern.ts";
import type { Breach } from "../roll/rollRules.ts";

/**
 * A right-hand finger by its name.
 * @example sayFinger("I") // => "index"
 */
export const sayFinger = (finger: PickFinger): string =>
  ({ T: "thumb", I: "index", M: "middle" })[finger];

/**
 * A string of a voicing as a player calls it.
 * @example saySome("fifth") // => "5th string"
 */
export const saySome = (on: VoicedString): string =>
  on === "fifth" ? "5th string" : `string ${on}`;

const theFinger = (finger: PickFinger | undefined): string =>
  finger === undefined || finger === "T" ? "The thumb" : `The ${sayFinger(finger)} finger`;

const strings: Readonly<Record<PickFinger, string>> = {
  T: "strings 2, 3 and 4 and the 5th",
  I: "strings 2, 3 and 4",
  M: "strings 1 and 2",
};

/** What a breach is, in one sentence; eighths count from 1. */
export const sayBreach = (breach: Breach, pattern: Pattern): string => {
  const { rule, finger } = breach;
  const eighth = breach.eighth + 1;
  switch (rule) {
    case "finger-twice":
      return `${theFinger(finger)} strikes twice running, on eighths ${eighth - 1} and ${eighth}.`;
    case "starts-off-thumb":
      return "The first eighth has no thumb: a pattern starts on the thumb.";
    case "ends-on-thumb":
      return `The thumb strikes on the last eighth, ${eighth}: it must be free to start the next pattern.`;
    case "out-of-reach":
      return `${theFinger(finger)} is off its strings on eighth ${eighth}: it picks ${strings[finger ?? "T"]}.`;
    case "not-one-stroke":
      return finger === undefined
        ? `The fingers cross, or share a string, on eighth ${eighth}: the thumb lies lowest, the middle finger highest.`
        : `${theFinger(finger)} is on strings that lie apart on eighth ${eighth}.`;
    case "empty":
      return "Nothing is struck yet.";
    case "wrong-length":
      return `${pattern.strokes.length} eighths are not whole measures of ${pattern.meter}, which has ${eighthsOfMeter[pattern.meter]}.`;
  }
};

const sayStroke = (pattern: Pattern, eighth: number): string => {
  const picks = voicedStrings
    .toReversed()
    .flatMap((on) =>
      fingersAt(pattern, eighth, on).map((finger) => `${sayFinger(finger)} on ${saySome(on)}`),
    );
  return picks.length === 0 ? "a rest" : picks.join(", ");
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
      ? [`eighth ${eighth + 1}: ${sayStroke(after, eighth)}`]
      : [];
  });
  const count = Math.abs(longer);
  const length =
    longer === 0
      ? []
      : [`${count} ${count === 1 ? "eighth" : "eighths"} ${longer > 0 ? "of rest added" : "cut"}`];
  return [...changed, ...length].join("; ");
};
