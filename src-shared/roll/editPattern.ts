import { eighthsOfMeter } from "./beats.ts";
import {
  MOST_EIGHTHS,
  type Pattern,
  type PatternMeter,
  type PatternPick,
  type PatternStroke,
  type PickFinger,
  type VoicedString,
} from "./pattern.ts";
import { reachOf } from "./rollRules.ts";

/** An eighth on which nothing is struck. */
export const rest: PatternStroke = { picks: [], accent: false, damped: false };

/** The strings of a pattern as they are written, the highest at the top as in tablature. */
export const voicedStrings: readonly VoicedString[] = [1, 2, 3, 4, "fifth"];

/** The finger that usually picks a string. Common practice, no published source. */
const homeFingers: Readonly<Record<VoicedString, PickFinger>> = {
  1: "M",
  2: "I",
  3: "T",
  4: "T",
  fifth: "T",
};

/**
 * The fingers that reach a string, its usual one first.
 * @example fingersFor(2) // => ["I", "T", "M"]
 */
export const fingersFor = (on: VoicedString): readonly PickFinger[] => {
  const home = homeFingers[on];
  const inReach = (["T", "I", "M"] as const).filter((finger) => reachOf[finger].includes(on));
  return inReach.toSorted((a, b) => Number(b === home) - Number(a === home));
};

/** The fingers on one string on one eighth, usually one or none. */
export const fingersAt = (
  pattern: Pattern,
  eighth: number,
  on: VoicedString,
): readonly PickFinger[] =>
  (pattern.strokes[eighth]?.picks ?? [])
    .filter((pick) => pick.on === on)
    .map((pick) => pick.finger);

/** The pattern with another stroke on one eighth; the same where there is no such eighth. */
export const withStroke = (
  pattern: Pattern,
  eighth: number,
  change: (stroke: PatternStroke) => PatternStroke,
): Pattern => {
  const stroke = pattern.strokes[eighth];
  return stroke ? { ...pattern, strokes: pattern.strokes.with(eighth, change(stroke)) } : pattern;
};

const place = (pick: PatternPick): number => voicedStrings.indexOf(pick.on);

/**
 * The pattern with a finger on a string on one eighth, in place of any that is there; null takes the
 * pick away. Without a pick an eighth has no accent and is not damped.
 */
export const withPick = (
  pattern: Pattern,
  eighth: number,
  on: VoicedString,
  finger: PickFinger | null,
): Pattern =>
  withStroke(pattern, eighth, (stroke) => {
    const others = stroke.picks.filter((pick) => pick.on !== on);
    const picks = finger === null ? others : [...others, { finger, on }];
    return picks.length === 0
      ? rest
      : { ...stroke, picks: picks.toSorted((a, b) => place(b) - place(a)) };
  });

/** The pattern with an accent or damping put on an eighth or taken off; a rest takes none. */
export const withMark = (pattern: Pattern, eighth: number, mark: "accent" | "damped"): Pattern =>
  pattern.strokes[eighth]?.picks.length === 0
    ? pattern
    : withStroke(pattern, eighth, (stroke) => ({ ...stroke, [mark]: !stroke[mark] }));

const strikesAt = (pattern: Pattern, eighth: number, finger: PickFinger): boolean =>
  pattern.strokes[eighth]?.picks.some((pick) => pick.finger === finger) ?? false;

/** The fingers for a string from the one that comes naturally there: usual, and free to strike. */
const naturalOrder = (
  pattern: Pattern,
  eighth: number,
  on: VoicedString,
): readonly PickFinger[] => {
  const fingers = fingersFor(on);
  const isFree = (finger: PickFinger): boolean =>
    !strikesAt(pattern, eighth - 1, finger) && !strikesAt(pattern, eighth + 1, finger);
  const first = Math.max(0, fingers.findIndex(isFree));
  return [...fingers.slice(first), ...fingers.slice(0, first)];
};

/**
 * What one click after the other puts on a string: the finger that comes naturally (the usual one,
 * unless it strikes just before or after), then the others in reach, then none.
 */
export const nextFinger = (
  pattern: Pattern,
  eighth: number,
  on: VoicedString,
): PickFinger | null => {
  const order = naturalOrder(pattern, eighth, on);
  const [now] = fingersAt(pattern, eighth, on);
  return (now === undefined ? order[0] : order[order.indexOf(now) + 1]) ?? null;
};

/** The pattern with so many eighths, 1 to 32: cut at its end, or filled up with rests. */
export const withLength = (pattern: Pattern, eighths: number): Pattern => {
  const length = Math.max(1, Math.min(MOST_EIGHTHS, Math.round(eighths)));
  const more = Array.from({ length: Math.max(0, length - pattern.strokes.length) }, () => rest);
  return { ...pattern, strokes: [...pattern.strokes.slice(0, length), ...more] };
};

/** The pattern in another meter: as many whole measures as before, or as much of one. */
export const withMeter = (pattern: Pattern, meter: PatternMeter): Pattern => {
  const { length } = pattern.strokes;
  const before = eighthsOfMeter[pattern.meter];
  const measure = eighthsOfMeter[meter];
  const wanted = length % before === 0 ? (length / before) * measure : Math.min(length, measure);
  return withLength({ ...pattern, meter }, Math.min(wanted, lengthsOf(meter).at(-1) ?? wanted));
};

/**
 * The lengths a pattern of a meter may have, in eighths: parts of a measure, then whole measures.
 * @example lengthsOf("2/4") // => [2, 3, 4, 8, 12, 16, 20, 24, 28, 32]
 */
export const lengthsOf = (meter: PatternMeter): readonly number[] => {
  const measure = eighthsOfMeter[meter];
  const parts = Array.from({ length: measure - 2 }, (_, index) => index + 2);
  const whole = Array.from(
    { length: Math.floor(MOST_EIGHTHS / measure) },
    (_, index) => (index + 1) * measure,
  );
  return [...parts, ...whole];
};

/**
 * A name that is not taken yet: as it is, or with the first free number from 2 after it. At most 60
 * characters.
 * @example freeName("Tin gate", ["Tin gate", "Tin gate 2"]) // => "Tin gate 3"
 */
export const freeName = (name: string, taken: readonly string[]): string => {
  const used = new Set(taken);
  const plain = name.trim().slice(0, 60).trim();
  if (!used.has(plain)) {
    return plain;
  }
  const stem = plain.replace(/ \d+$/, "").slice(0, 55).trim();
  let number = 2;
  while (used.has(`${stem} ${number}`)) {
    number += 1;
  }
  return `${stem} ${number}`;
};
