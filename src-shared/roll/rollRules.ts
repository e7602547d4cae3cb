import { eighthsOfMeter } from "./beats.ts";
import {
  MOST_EIGHTHS,
  type Pattern,
  type PatternPick,
  type PatternStroke,
  type PickFinger,
  type VoicedString,
} from "./pattern.ts";

/**
 * What a pattern can break. `finger-twice`: a finger strikes on two successive eighths;
 * `starts-off-thumb`: the thumb does not strike first; `ends-on-thumb`: it strikes on the last
 * eighth; `out-of-reach`: a finger on a string that is not its own; `not-one-stroke`: a pinch that
 * one hand cannot strike at once; `empty`: nothing is struck; `wrong-length`: more than a measure,
 * and not whole measures.
 */
export type Rule =
  | "finger-twice"
  | "starts-off-thumb"
  | "ends-on-thumb"
  | "out-of-reach"
  | "not-one-stroke"
  | "empty"
  | "wrong-length";

/** A rule that a pattern breaks, the 0-based eighth where it does, and the finger if one is to blame. */
export type Breach = {
  readonly rule: Rule;
  readonly eighth: number;
  readonly finger?: PickFinger;
};

/** The strings that each finger picks singly. Common practice, no published source. */
export const reachOf: Readonly<Record<PickFinger, readonly VoicedString[]>> = {
  T: ["fifth", 4, 3, 2],
  I: [4, 3, 2],
  M: [2, 1],
};

/** The right-hand fingers from the thumb on. */
export const pickFingers: readonly PickFinger[] = ["T", "I", "M"];

/** Strings as they lie under the hand: 1 nearest the floor, the fifth string 5. */
const lie = (on: VoicedString): number => (on === "fifth" ? 5 : on);

const usesFinger = (stroke: PatternStroke | undefined, finger: PickFinger): boolean =>
  stroke?.picks.some((pick) => pick.finger === finger) ?? false;

const stringsOf = (stroke: PatternStroke, finger: PickFinger): readonly VoicedString[] =>
  stroke.picks.filter((pick) => pick.finger === finger).map((pick) => pick.on);

/**
 * Where a finger would have to strike on two successive eighths, in order. A rest between two
 * strokes frees every finger.
 */
export const fingersTwice = (strokes: readonly PatternStroke[]): readonly Breach[] =>
  strokes.flatMap((stroke, eighth) =>
    pickFingers
      .filter((finger) => usesFinger(stroke, finger) && usesFinger(strokes[eighth - 1], finger))
      .map((finger): Breach => ({ rule: "finger-twice", eighth, finger })),
  );

/** A finger that sweeps over several strings needs only one of them in its reach. */
const outOfReach = (stroke: PatternStroke, eighth: number): readonly Breach[] =>
  pickFingers
    .filter((finger) => {
      const strings = stringsOf(stroke, finger);
      return strings.length > 0 && !strings.some((on) => reachOf[finger].includes(on));
    })
    .map((finger): Breach => ({ rule: "out-of-reach", eighth, finger }));

const areNeighbours = (strings: readonly VoicedString[]): boolean => {
  const lies = strings.map(lie);
  return Math.max(...lies) - Math.min(...lies) === new Set(lies).size - 1;
};

/** Fingers lie over the strings in order, the thumb lowest; none reaches across another. */
const areInOrder = (picks: readonly PatternPick[]): boolean =>
  picks.every((one) =>
    picks.every(
      (other) =>
        pickFingers.indexOf(one.finger) >= pickFingers.indexOf(other.finger) ||
        lie(one.on) > lie(other.on),
    ),
  );

const notOneStroke = (stroke: PatternStroke, eighth: number): readonly Breach[] => {
  const { picks } = stroke;
  const scattered = pickFingers.find((finger) => {
    const strings = stringsOf(stroke, finger);
    return strings.length > 1 && !areNeighbours(strings);
  });
  if (scattered !== undefined) {
    return [{ rule: "not-one-stroke", eighth, finger: scattered }];
  }
  const eachOnce = new Set(picks.map((pick) => pick.on)).size === picks.length;
  return eachOnce && areInOrder(picks) ? [] : [{ rule: "not-one-stroke", eighth }];
};

const atItsEnds = (strokes: readonly PatternStroke[]): readonly Breach[] => {
  const starts: readonly Breach[] = usesFinger(strokes[0], "T")
    ? []
    : [{ rule: "starts-off-thumb", eighth: 0 }];
  const ends: readonly Breach[] = usesFinger(strokes.at(-1), "T")
    ? [{ rule: "ends-on-thumb", eighth: strokes.length - 1, finger: "T" }]
    : [];
  return [...starts, ...ends];
};

const lengthBreach = ({ meter, strokes }: Pattern): readonly Breach[] => {
  const measure = eighthsOfMeter[meter];
  const { length } = strokes;
  return length <= measure || (length % measure === 0 && length <= MOST_EIGHTHS)
    ? []
    : [{ rule: "wrong-length", eighth: length - 1 }];
};

/**
 * What keeps a pattern from being played and joined to any other, in the order of its eighths; those
 * that concern its whole length come last. A pattern without a stroke has that one breach.
 * Common practice, no published source.
 */
export const breachesOf = (pattern: Pattern): readonly Breach[] => {
  const { strokes } = pattern;
  if (strokes.every((stroke) => stroke.picks.length === 0)) {
    return [{ rule: "empty", eighth: 0 }];
  }
  const inStrokes = strokes.flatMap((stroke, eighth) => [
    ...outOfReach(stroke, eighth),
    ...notOneStroke(stroke, eighth),
  ]);
  return [
    ...[...fingersTwice(strokes), ...inStrokes, ...atItsEnds(strokes)].toSorted(
      (a, b) => a.eighth - b.eighth,
    ),
    ...lengthBreach(pattern),
  ];
};
