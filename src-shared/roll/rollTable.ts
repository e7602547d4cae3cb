// Right-hand patterns. A letter is an eighth: B the thumb on the voicing's lowest string, T the thumb
// on string 3, t the thumb on the open fifth string (on 3 where it is not used), I the index on 2, M
// the middle on 1, P a damped pinch of all three on 3-2-1, p one of index and middle, S a strum of the
// thumb over all strings, O a pinch that rings, - a rest. Names and patterns: common practice, no
// published source; so is the rule that one measure takes the second half of the two-measure pattern.
// The eight-eighth rolls are the ones printed in method books; what lies in 3/4, 6/8, 9/8 and in parts
// of a measure is derived from them.
import { words } from "../wordTable.ts";
import { isStrong } from "./beats.ts";
import type {
  Pattern,
  PatternMeter,
  PatternPick,
  PatternStroke,
  PickFinger,
  VoicedString,
} from "./pattern.ts";
import { patternMeters } from "./pattern.ts";
import { type StyleName, styleNames } from "./picking.ts";

const pick = (finger: PickFinger, on: VoicedString): PatternPick => ({ finger, on });

const fretted = [pick("T", 3), pick("I", 2), pick("M", 1)] as const;

const picksOf: Readonly<Record<string, readonly PatternPick[]>> = {
  B: [pick("T", 4)],
  T: [pick("T", 3)],
  t: [pick("T", "fifth")],
  I: [pick("I", 2)],
  M: [pick("M", 1)],
  P: fretted,
  p: [pick("I", 2), pick("M", 1)],
  S: [pick("T", 4), pick("T", 3), pick("T", 2), pick("T", 1)],
  O: [pick("T", 4), pick("I", 2), pick("M", 1)],
  "-": [],
};

const strokeOf = (letter: string): Omit<PatternStroke, "accent"> => {
  const picks = picksOf[letter];
  if (!picks) {
    throw new Error(`"${letter}" is no stroke`);
  }
  return { picks, damped: letter === "P" || letter === "p" };
};

const patternOf = (name: string, meter: PatternMeter, letters: string): Pattern => ({
  name,
  meter,
  strokes: [...letters].map((letter, eighth) => ({
    ...strokeOf(letter),
    accent: letter !== "-" && isStrong(meter, eighth),
  })),
});

/** The one stroke of a pinch that rings: lowest string, 2 and 1. */
export const pinchStroke: PatternStroke = { ...strokeOf("O"), accent: false };

/** A damped pinch of index and middle: what stands where the thumb must be free at once. */
export const lightPinch: PatternStroke = { ...strokeOf("p"), accent: false };

/** What a style plays in one meter: whole measures, the longest first, and parts of measures. */
export type Family = {
  readonly wholes: readonly Pattern[];
  /** Parts by their length in eighths, or the name of a part that is cut out of the measure. */
  readonly parts: ReadonlyMap<number, Pattern> | string;
};

/** Two measures of 4/4, one, one of 3/4, of 2/4, of 6/8 and of 9/8, and cells of 2 to 11 eighths. */
type Rolled = {
  readonly name: string;
  readonly two: string;
  readonly one: string;
  readonly waltz: string;
  readonly short: string;
  readonly jig: string;
  readonly slip: string;
  readonly cells: readonly (readonly [string, string])[];
};

const rolled: Readonly<Record<Exclude<StyleName, "vamp" | "strum">, Rolled>> = {
  forward: {
    name: words.rolls.names.forward,
    two: "BIMtIMtIBIMtIMtM",
    one: "BIMtIMtM",
    waltz: "BIMtIM",
    short: "BItM",
    jig: "BIMtIM",
    slip: "BIMtIMtIM",
    cells: [
      [words.rolls.cells.thumbMiddle, "BM"],
      [words.rolls.cells.forwardCell, "BIM"],
      [words.rolls.cells.halfAlternating, "BItM"],
      [words.rolls.cells.forwardCellThumbMiddle, "BIMtM"],
      [words.rolls.cells.twoForward, "BIMtIM"],
      [words.rolls.cells.forwardAlternating, "BIMTItM"],
      [words.rolls.cells.forward8, "BIMtIMtM"],
      [words.rolls.cells.threeForward, "BIMtIMtIM"],
      [words.rolls.cells.twoForwardAlternating, "BIMtIMTItM"],
      [words.rolls.cells.threeForwardThumbMiddle, "BIMtIMtIMtM"],
    ],
  },
  backward: {
    name: words.rolls.names.backward,
    two: "BMItMItMBMItMItI",
    one: "BMItMItI",
    waltz: "BMItMI",
    short: "BMtI",
    jig: "BMItMI",
    slip: "BMItMItMI",
    cells: [
      [words.rolls.cells.thumbIndex, "BI"],
      [words.rolls.cells.backwardCell, "BMI"],
      [words.rolls.cells.halfBackward, "BMtI"],
      [words.rolls.cells.backwardCellThumbIndex, "BMItI"],
      [words.rolls.cells.twoBackward, "BMItMI"],
      [words.rolls.cells.backward7, "BMITMtI"],
      [words.rolls.cells.backward8, "BMItMItI"],
      [words.rolls.cells.threeBackward, "BMItMItMI"],
      [words.rolls.cells.backward10, "BMItMITMtI"],
      [words.rolls.cells.threeBackwardThumbIndex, "BMItMItMItI"],
    ],
  },
  "forward-reverse": {
    name: words.rolls.names.reverse,
    two: "BIMtMITMBIMtMITM",
    one: "BIMtMITM",
    waltz: "BIMtMI",
    short: "BIMI",
    jig: "BIMtMI",
    slip: "BIMtMItIM",
    cells: [
      [words.rolls.cells.thumbMiddle, "BM"],
      [words.rolls.cells.forwardCell, "BIM"],
      [words.rolls.cells.halfReverse, "BIMI"],
      [words.rolls.cells.forwardCellThumbMiddle, "BIMtM"],
      [words.rolls.cells.reverse6, "BIMtMI"],
      [words.rolls.cells.reverse7, "BIMItIM"],
      [words.rolls.cells.reverse8, "BIMtMITM"],
      [words.rolls.cells.reverse9, "BIMtMItIM"],
      [words.rolls.cells.reverse10, "BIMtMItIMI"],
      [words.rolls.cells.reverse11, "BIMtMItIMtM"],
    ],
  },
  "alternating-thumb": {
    name: words.rolls.names.alternating,
    two: "TItMBItMTItMBItM",
    one: "TItMBItM",
    waltz: "BItMIM",
    short: "BItM",
    jig: "TIMBIM",
    slip: "TIMBIMTIM",
    cells: [
      [words.rolls.cells.thumbMiddle, "BM"],
      [words.rolls.cells.forwardCell, "BIM"],
      [words.rolls.cells.halfAlternating, "BItM"],
      [words.rolls.cells.alternating5, "BItIM"],
      [words.rolls.cells.alternating6, "BItMIM"],
      [words.rolls.cells.alternating7, "BItMTIM"],
      [words.rolls.cells.alternating8, "TItMBItM"],
      [words.rolls.cells.alternating9, "BItMTItIM"],
      [words.rolls.cells.alternating10, "BItMTItMIM"],
      [words.rolls.cells.alternating11, "BItMTItMTIM"],
    ],
  },
};

const familyOfRoll = (roll: Rolled, meter: PatternMeter): Family => {
  const { name, two, one, waltz, short, jig, slip } = roll;
  const parts = new Map(
    roll.cells.map(([label, letters]) => [letters.length, patternOf(label, meter, letters)]),
  );
  const measure = { "4/4": one, "3/4": waltz, "2/4": short, "6/8": jig, "9/8": slip }[meter];
  const wholes = [
    ...(meter === "4/4" ? [patternOf(words.rolls.twoMeasures(name), meter, two)] : []),
    patternOf(
      meter === "3/4" ? words.rolls.waltzMeasure(name) : words.rolls.oneMeasure(name),
      meter,
      measure,
    ),
  ];
  return { wholes, parts };
};

/** Measures from which the parts are cut: what is struck depends on the beat. */
const onTheBeat: Readonly<Record<"vamp" | "strum", Readonly<Record<PatternMeter, string>>>> = {
  vamp: { "4/4": "B-P-B-P-", "3/4": "B-P-P-", "2/4": "B-P-", "6/8": "B--P--", "9/8": "B--P--P--" },
  strum: { "4/4": "S---S---", "3/4": "S-----", "2/4": "S---", "6/8": "S--S--", "9/8": "S--S--S--" },
};

const familyOf = (style: StyleName, meter: PatternMeter): Family => {
  if (style !== "vamp" && style !== "strum") {
    return familyOfRoll(rolled[style], meter);
  }
  const name = words.rolls.names[style];
  const measure = onTheBeat[style][meter];
  const two = patternOf(words.rolls.twoMeasures(name), meter, `${measure}${measure}`);
  return {
    wholes: [
      ...(meter === "4/4" ? [two] : []),
      patternOf(words.rolls.oneMeasure(name), meter, measure),
    ],
    parts: words.rolls.partOfMeasure(name),
  };
};

const families: ReadonlyMap<StyleName, ReadonlyMap<PatternMeter, Family>> = new Map(
  styleNames.map((style) => [
    style,
    new Map(patternMeters.map((meter) => [meter, familyOf(style, meter)])),
  ]),
);

/** What a style plays in a meter. */
export const familyIn = (style: StyleName, meter: PatternMeter): Family => {
  const family = families.get(style)?.get(meter);
  if (!family) {
    throw new Error(`no patterns of the style ${style} in ${meter}`);
  }
  return family;
};

/** Every pattern that a style has in a meter, the longest whole measures first. */
export const patternsOf = (style: StyleName, meter: PatternMeter): readonly Pattern[] => {
  const { wholes, parts } = familyIn(style, meter);
  return typeof parts === "string" ? wholes : [...wholes, ...parts.values()];
};
