import { degreeSymbol } from "../harmony/degree.ts";
import type { Tuning } from "../neck/neck.ts";
import { type Exercise, type ExerciseShape, readExercise } from "../practice/exercises.ts";
import type { HeldChord, Item } from "../practice/practice.ts";
import { words } from "../wordTable.ts";
import { sayShapeChoice } from "./sayShape.ts";

const say = words.rehearsal;

/** The shape of an exercise: the trade's name on strings 3-2-1 in a tuning, or that it is free. */
export const sayExerciseShape = (shape: ExerciseShape, tuning: Tuning): string =>
  shape === "both" ? say.bothShapes : sayShapeChoice(shape, "3-2-1", tuning);

/**
 * An exercise in words, without its shape.
 * @example sayExercise({ kind: "circle", key: { tonic: "G", mode: "major" }, shape: "F" }) // => "Circle of keys from G"
 */
export const sayExercise = (exercise: Exercise): string => {
  const { tonic } = exercise.key;
  switch (exercise.kind) {
    case "pair":
      return say.pairName(tonic, degreeSymbol(exercise.from), degreeSymbol(exercise.to));
    case "circle":
      return say.circleName(tonic);
    case "calls":
      return say.callsName(tonic, exercise.seed);
  }
};

/** The fret that the index finger covers. */
const positionOf = ({ frets }: HeldChord): number =>
  Math.min(...frets.filter((fret) => fret !== null));

/**
 * A change by its chords alone.
 * @example sayChange({ from: { chord: "G" }, to: { chord: "C" } }) // => "G to C"
 */
export const sayChange = (change: {
  readonly from: Pick<HeldChord, "chord">;
  readonly to: Pick<HeldChord, "chord">;
}): string => say.change(change.from.chord, change.to.chord);

/**
 * What is practised, in a few words, a change with the frets it goes between; bars count from 1.
 * @example sayItem({ kind: "passage", firstBar: 4, lastBar: 7 }) // => "Bars 5 to 8"
 * @example sayItem({ kind: "exercise", name: "calls A D 7" }) // => "Calls in A, set 7"
 */
export const sayItem = (item: Item): string => {
  switch (item.kind) {
    case "change":
      return say.changeAt(sayChange(item), positionOf(item.from), positionOf(item.to));
    case "passage":
      return say.passage(item.firstBar + 1, item.lastBar + 1);
    case "song":
      return say.wholeSong;
    case "exercise": {
      const exercise = readExercise(item.name);
      return exercise ? sayExercise(exercise) : item.name;
    }
  }
};

/**
 * Seconds as a clock shows them; a second begun counts whole, below 0 is 0:00.
 * @example sayClock(194.2) // => "3:15"
 */
export const sayClock = (seconds: number): string => {
  const whole = Math.max(0, Math.ceil(seconds));
  return say.clock(Math.floor(whole / 60), whole % 60);
};
