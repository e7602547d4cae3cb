// Right-hand patterns for the closed triad on strings 3, 2 and 1: thumb on 3, index on 2, middle
// on 1. Names and patterns: common practice, no published source; the rule that one measure takes
// the second half of the two-measure pattern likewise.
import type { Pick, PickFinger, Roll, Stroke } from "./roll.ts";

const homeString = { T: 3, I: 2, M: 1 } as const;

const pick = (finger: PickFinger): Pick => ({ finger, string: homeString[finger] });

const rollOf = (name: string, fingers: string): Roll => ({
  name,
  strokes: fingers
    .replace(/\s/g, "")
    .split("")
    .map((finger): Stroke => [pick(finger as PickFinger)]),
});

const secondMeasure = "TIMTIMTM";

/** Two measures of 4/4 on one chord. */
export const twoMeasureRoll: Roll = rollOf("forward, two measures", `TIMTIMTI ${secondMeasure}`);

/** One measure of 4/4: the second half of the two-measure roll. */
export const oneMeasureRoll: Roll = rollOf("forward, one measure", secondMeasure);

/** Half a measure of 4/4. */
export const halfMeasureRoll: Roll = rollOf("alternating thumb, half a measure", "TITM");

/** One measure of 3/4. */
export const waltzRoll: Roll = rollOf("forward, waltz measure", "TIMTIM");

/** All fingers on one stroke: what is too short to roll. */
export const pinch: Roll = { name: "pinch", strokes: [[pick("T"), pick("I"), pick("M")]] };

/** Cells for parts of a measure, by their length of 2 to 10 eighths. */
export const cells: ReadonlyMap<number, Roll> = new Map(
  [
    rollOf("thumb and middle", "TM"),
    rollOf("forward cell", "TIM"),
    halfMeasureRoll,
    rollOf("forward cell and thumb and middle", "TIM TM"),
    rollOf("two forward cells", "TIM TIM"),
    rollOf("forward cell and alternating thumb", "TIM TITM"),
    oneMeasureRoll,
    rollOf("three forward cells", "TIM TIM TIM"),
    rollOf("two forward cells and alternating thumb", "TIM TIM TITM"),
  ].map((roll) => [roll.strokes.length, roll]),
);

/** Every pattern there is, for the laws that hold for all of them. */
export const rolls: readonly Roll[] = [
  twoMeasureRoll,
  oneMeasureRoll,
  waltzRoll,
  ...cells.values(),
].filter((roll, index, all) => all.indexOf(roll) === index);
