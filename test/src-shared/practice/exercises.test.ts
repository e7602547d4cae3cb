import fc from "fast-check";
import { Note, Key as TonalKey } from "tonal";
import { describe, expect, test } from "vitest";
import { chartToScore, type Walk } from "../../../src-shared/chartToScore.ts";
import type { Key } from "../../../src-shared/harmony/key.ts";
import { keyAt } from "../../../src-shared/harmony/readKey.ts";
import {
  type Exercise,
  exerciseChart,
  exerciseName,
  exerciseShapes,
  pairsIn,
  readExercise,
} from "../../../src-shared/practice/exercises.ts";
import { newSongSettings } from "../../../src-shared/settings.ts";

const anyKey = fc.integer({ min: 0, max: 11 }).map((pitch) => keyAt(pitch, "major"));
const anyShape = fc.constantFrom(...exerciseShapes);
const anyExercise: fc.Arbitrary<Exercise> = fc.tuple(anyKey, anyShape).chain(([key, shape]) =>
  fc.oneof(
    fc.constantFrom(...pairsIn(key, shape)),
    fc.constant<Exercise>({ kind: "circle", key, shape }),
    fc.nat({ max: 999_999_999 }).map((seed): Exercise => ({ kind: "calls", key, shape, seed })),
  ),
);

const walkOf = (exercise: Exercise): Walk => {
  const { text, shapes } = exerciseChart(exercise, "Drill");
  return chartToScore(text, { ...newSongSettings.plan, shapes }, null);
};

const chordsOf = (walk: Walk): readonly (string | undefined)[] =>
  walk.timeline.stays.map(({ chord }) => chord?.name);

const G: Key = { tonic: "G", mode: "major" };

describe("every exercise", () => {
  test("goes the one way through: no word of complaint, a route, and only the shapes asked for", () => {
    fc.assert(
      fc.property(anyExercise, (exercise) => {
        const walk = walkOf(exercise);
        expect(walk.notes).toEqual([]);
        const shapes = new Set(walk.route?.placements.map(({ voicing }) => voicing.shape));
        const asked = exercise.shape === "both" ? ["D", "F"] : [exercise.shape];
        expect(shapes.size).toBeGreaterThan(0);
        expect([...shapes].every((shape) => asked.includes(shape))).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  test("is read back from its name", () => {
    fc.assert(
      fc.property(anyExercise, (exercise) => {
        expect(readExercise(exerciseName(exercise))).toEqual(exercise);
      }),
    );
  });

  test("has a name of its own, and no other text is one", () => {
    const names = exerciseShapes.flatMap((shape) => pairsIn(G, shape)).map(exerciseName);
    expect(new Set(names).size).toBe(names.length);
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = readExercise(text);
        expect(read === null || typeof exerciseName(read) === "string").toBe(true);
      }),
    );
    for (const text of ["", "pair G F 1 9", "circle H F", "calls G F -3", "pair Gm F 1 4"]) {
      expect(readExercise(text)).toBeNull();
    }
  });
});

describe("the pairs of a key", () => {
  test("are every two of seven degrees once, as tonal names their chords", () => {
    const pairs = pairsIn(G, "F").map((pair) => chordsOf(walkOf(pair)).join(" "));
    const { triads } = TonalKey.majorKey("G");
    const chords = [...triads.slice(0, 6), "F"];
    const wanted = chords.flatMap((one, at) =>
      chords.slice(at + 1).map((other) => `${one} ${other}`),
    );
    expect(pairs).toEqual(wanted);
  });
});

describe("the circle of keys", () => {
  test("comes through all twelve, each a fifth below the one before, by tonal", () => {
    const roots = chordsOf(walkOf({ kind: "circle", key: G, shape: "D" }));
    const wanted = Array.from({ length: 12 }, (_, step) =>
      Note.chroma(Note.transposeFifths("G", -step)),
    );
    expect(roots.map((root) => Note.chroma(root ?? ""))).toEqual(wanted);
  });
});

describe("random calls", () => {
  test("are sixteen bars, never one chord twice running, round the end too, and the same for a seed", () => {
    fc.assert(
      fc.property(fc.nat({ max: 9999 }), (seed) => {
        const exercise: Exercise = { kind: "calls", key: G, shape: "F", seed };
        const chords = chordsOf(walkOf(exercise));
        expect(chords).toHaveLength(16);
        expect(chords.every((chord, at) => chord !== chords[(at + 1) % 16])).toBe(true);
        expect(exerciseChart(exercise, "Drill")).toEqual(exerciseChart(exercise, "Drill"));
      }),
      { numRuns: 40 },
    );
  });
});
