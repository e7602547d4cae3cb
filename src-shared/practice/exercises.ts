import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { plainHeader } from "../chart/readHeader.ts";
import type { Bar, Song } from "../chart/song.ts";
import { writeChart } from "../chart/writeChart.ts";
import { chordOnDegree, type DegreeChord, degreeSymbol } from "../harmony/degree.ts";
import type { Key } from "../harmony/key.ts";
import { pitchClassOf } from "../harmony/noteName.ts";
import { readDegree } from "../harmony/readDegree.ts";
import { keyAt, readKey } from "../harmony/readKey.ts";
import { degreeCall } from "../jam/call.ts";
import { bpm } from "../units.ts";
import type { ShapeName } from "../voicing/voicing.ts";

/** Which shape an exercise keeps to; `both` goes to the nearer of the F and the D shape. */
export type ExerciseShape = "F" | "D" | "both";

/**
 * Something to practise without a song. `pair`: two degrees of a key, back and forth; `circle`: the 1
 * of every key, each a fifth below the one before; `calls`: degrees by chance, no two alike in a row,
 * always the same for a seed (a whole number from 0 on).
 */
export type Exercise = { readonly key: Key; readonly shape: ExerciseShape } & (
  | { readonly kind: "pair"; readonly from: DegreeChord; readonly to: DegreeChord }
  | { readonly kind: "circle" }
  | { readonly kind: "calls"; readonly seed: number }
);

/** All choices of shape, the usual one first. */
export const exerciseShapes: readonly ExerciseShape[] = ["F", "D", "both"];

/**
 * The degrees that are practised: those that songs of the trade are called with, in major keys. Common
 * practice, no published source.
 */
export const practisedDegrees: readonly DegreeChord[] = [
  degreeCall(1, ""),
  degreeCall(2, "m"),
  degreeCall(3, "m"),
  degreeCall(4, ""),
  degreeCall(5, ""),
  degreeCall(6, "m"),
  { degree: { number: 7, accidental: "b" }, quality: "", bass: null },
];

/** What chance draws calls from: 1, 4 and 5 twice as often as the others. A design choice. */
const calledDegrees: readonly DegreeChord[] = practisedDegrees.flatMap((call) =>
  call.quality === "" && call.degree.accidental === "" ? [call, call] : [call],
);

const CALLED_BARS = 16;
/** Quarters a minute to come to in the end: a driving song in cut time. Common practice. */
const EXERCISE_TEMPO = bpm(200);

/** Every two degrees of a key, in one shape; the way back is in each of them. */
export const pairsIn = (key: Key, shape: ExerciseShape): readonly Exercise[] =>
  practisedDegrees.flatMap((from, index) =>
    practisedDegrees
      .slice(index + 1)
      .map((to): Exercise => ({ kind: "pair", key, shape, from, to })),
  );

/** Twelve tonics from a key's own, each a fifth below the one before. */
const circleFrom = (key: Key): readonly Key[] =>
  Array.from({ length: 12 }, (_, step) =>
    keyAt((pitchClassOf(key.tonic) + 5 * step) % 12, "major"),
  );

const drawn = (seed: number): readonly DegreeChord[] => {
  const chance = xoroshiro128plus(seed);
  const calls: DegreeChord[] = [degreeCall(1, "")];
  while (calls.length < CALLED_BARS) {
    // The last call leads back to the first, so that it differs from that one too.
    const taken = [calls.at(-1), ...(calls.length === CALLED_BARS - 1 ? [calls[0]] : [])].map(
      (call) => call && degreeSymbol(call),
    );
    const free = calledDegrees.filter((call) => !taken.includes(degreeSymbol(call)));
    const next = free[uniformInt(chance, 0, free.length - 1)];
    if (next) calls.push(next);
  }
  return calls;
};

/** The chords of an exercise, a bar each. */
const barsOf = (exercise: Exercise): readonly DegreeChord[] => {
  switch (exercise.kind) {
    case "pair":
      return [exercise.from, exercise.to];
    case "circle":
      return [];
    case "calls":
      return drawn(exercise.seed);
  }
};

const barOf = (symbol: string, chord: Bar["stays"][number]["chord"]): Bar => ({
  stays: [{ symbol, chord, eighths: 8 }],
  opensRepeat: false,
  plays: 1,
  ending: null,
  endsEnding: false,
});

const songOf = (exercise: Exercise, title: string): Song => {
  const bars =
    exercise.kind === "circle"
      ? circleFrom(exercise.key).map((key) => {
          const chord = chordOnDegree(degreeCall(1, ""), key);
          return barOf(chord.name, chord);
        })
      : barsOf(exercise).map((call) =>
          barOf(degreeSymbol(call), chordOnDegree(call, exercise.key)),
        );
  const sections = [{ label: null, bars }];
  return { ...plainHeader, title, key: exercise.key, tempo: EXERCISE_TEMPO, form: null, sections };
};

/** What an exercise comes to: a chart, and the shapes that the planner may take for it. */
export type ExerciseChart = {
  readonly text: string;
  readonly shapes: readonly ShapeName[];
};

/** An exercise as a chart under a title, to go the one way through; played round and round. */
export const exerciseChart = (exercise: Exercise, title: string): ExerciseChart => ({
  text: writeChart(songOf(exercise, title)),
  shapes: exercise.shape === "both" ? ["F", "D"] : [exercise.shape],
});

/**
 * The name by which an exercise is known in the log; `readExercise` reads it back.
 * @example exerciseName({ kind: "calls", key: { tonic: "A", mode: "major" }, shape: "D", seed: 7 }) // => "calls A D 7"
 */
export const exerciseName = (exercise: Exercise): string => {
  const start = `${exercise.kind} ${exercise.key.tonic} ${exercise.shape}`;
  switch (exercise.kind) {
    case "pair":
      return `${start} ${degreeSymbol(exercise.from)} ${degreeSymbol(exercise.to)}`;
    case "circle":
      return start;
    case "calls":
      return `${start} ${exercise.seed}`;
  }
};

/**
 * The exercise of a name; null where the name is none.
 * @example readExercise("circle G F") // => { kind: "circle", key: { tonic: "G", mode: "major" }, shape: "F" }
 * @example readExercise("song") // => null
 */
export const readExercise = (name: string): Exercise | null => {
  const [kind = "", tonic = "", shapeName = "", one = "", other = ""] = name.split(" ");
  const reading = readKey(tonic);
  const shape = exerciseShapes.find((each) => each === shapeName);
  if (!reading.ok || reading.key.mode !== "major" || !shape) return null;
  const { key } = reading;
  if (kind === "circle") return { kind, key, shape };
  if (kind === "calls")
    return /^\d{1,9}$/.test(one) ? { kind, key, shape, seed: Number(one) } : null;
  const [from, to] = [readDegree(one), readDegree(other)];
  if (kind !== "pair" || !from.ok || !to.ok) return null;
  return { kind, key, shape, from: from.chord, to: to.chord };
};
