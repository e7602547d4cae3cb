// Right-hand patterns. A letter is an eighth: B the thumb on the voicing's lowest string, T the thumb
// on string 3, t the thumb on the open fifth string (on 3 where it is not used), I the index on 2, M
// the middle on 1, P a damped pinch of all three on 3-2-1, p one of index and middle, S a strum of the
// thumb over all strings, O a pinch that rings, - a rest. Names and patterns: common practice, no
// published source; so is the rule that one measure takes the second half of the two-measure pattern.
// The eight-eighth rolls are the ones printed in method books; what lies in 3/4, 6/8, 9/8 and in parts
// of a measure is derived from them.
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
    name: "forward",
    two: "BIMtIMtIBIMtIMtM",
    one: "BIMtIMtM",
    waltz: "BIMtIM",
    short: "BItM",
    jig: "BIMtIM",
    slip: "BIMtIMtIM",
    cells: [
      ["thumb and middle", "BM"],
      ["forward cell", "BIM"],
      ["alternating thumb, half a measure", "BItM"],
      ["forward cell and thumb and middle", "BIMtM"],
      ["two forward cells", "BIMtIM"],
      ["forward cell and alternating thumb", "BIMTItM"],
      ["forward, eight eighths", "BIMtIMtM"],
      ["three forward cells", "BIMtIMtIM"],
      ["two forward cells and alternating thumb", "BIMtIMTItM"],
      ["three forward cells and thumb and middle", "BIMtIMtIMtM"],
    ],
  },
  backward: {
    name: "backward",
    two: "BMItMItMBMItMItI",
    one: "BMItMItI",
    waltz: "BMItMI",
    short: "BMtI",
    jig: "BMItMI",
    slip: "BMItMItMI",
    cells: [
      ["thumb and index", "BI"],
      ["backward cell", "BMI"],
      ["backward, half a measure", "BMtI"],
      ["backward cell and thumb and index", "BMItI"],
      ["two backward cells", "BMItMI"],
      ["backward, seven eighths", "BMITMtI"],
      ["backward, eight eighths", "BMItMItI"],
      ["three backward cells", "BMItMItMI"],
      ["backward, ten eighths", "BMItMITMtI"],
      ["three backward cells and thumb and index", "BMItMItMItI"],
    ],
  },
  "forward-reverse": {
    name: "forward-reverse",
    two: "BIMtMITMBIMtMITM",
    one: "BIMtMITM",
    waltz: "BIMtMI",
    short: "BIMI",
    jig: "BIMtMI",
    slip: "BIMtMItIM",
    cells: [
      ["thumb and middle", "BM"],
      ["forward cell", "BIM"],
      ["forward-reverse, half a measure", "BIMI"],
      ["forward cell and thumb and middle", "BIMtM"],
      ["forward-reverse, six eighths", "BIMtMI"],
      ["forward-reverse, seven eighths", "BIMItIM"],
      ["forward-reverse, eight eighths", "BIMtMITM"],
      ["forward-reverse, nine eighths", "BIMtMItIM"],
      ["forward-reverse, ten eighths", "BIMtMItIMI"],
      ["forward-reverse, eleven eighths", "BIMtMItIMtM"],
    ],
  },
  "alternating-thumb": {
    name: "alternating thumb",
    two: "TItMBItMTItMBItM",
    one: "TItMBItM",
    waltz: "BItMIM",
    short: "BItM",
    jig: "TIMBIM",
    slip: "TIMBIMTIM",
    cells: [
      ["thumb and middle", "BM"],
      ["forward cell", "BIM"],
      ["alternating thumb, half a measure", "BItM"],
      ["alternating thumb, five eighths", "BItIM"],
      ["alternating thumb, six eighths", "BItMIM"],
      ["alternating thumb, seven eighths", "BItMTIM"],
      ["alternating thumb, eight eighths", "TItMBItM"],
      ["alternating thumb, nine eighths", "BItMTItIM"],
      ["alternating thumb, ten eighths", "BItMTItMIM"],
      ["alternating thumb, eleven eighths", "BItMTItMTIM"],
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
    ...(meter === "4/4" ? [patternOf(`${name}, two measures`, meter, two)] : []),
    patternOf(`${name}, ${meter === "3/4" ? "waltz" : "one"} measure`, meter, measure),
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
  const name = style === "vamp" ? "vamp" : "single strum";
  const measure = onTheBeat[style][meter];
  const two = patternOf(`${name}, two measures`, meter, `${measure}${measure}`);
  return {
    wholes: [...(meter === "4/4" ? [two] : []), patternOf(`${name}, one measure`, meter, measure)],
    parts: `${name}, part of a measure`,
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
