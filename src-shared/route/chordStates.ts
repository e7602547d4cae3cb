import type { Path } from "./layers.ts";
import { type Problem, withOpen } from "./problem.ts";

/** For each chord, by its place among the song's chords: 1 for each of its states that is meant. */
export type States = readonly Uint8Array[];

/**
 * A problem told by its chords: for each slot its chord's place among them, for each chord one slot
 * that has it, and where each slot's states begin when all slots' are counted through.
 */
export type ByChord = {
  readonly problem: Problem;
  readonly chordOf: readonly number[];
  readonly slotOf: readonly number[];
  readonly stateAt: readonly number[];
};

/** Tells a problem by its chords, in the order in which they first come. */
export const byChord = (problem: Problem): ByChord => {
  const chords = new Map<string, number>();
  const slotOf: number[] = [];
  const stateAt: number[] = [];
  let states = 0;
  const chordOf = problem.slots.map(({ chord }, slot) => {
    stateAt.push(states);
    states += problem.layers.width(slot);
    const own = chords.get(chord.name) ?? slotOf.length;
    if (own === slotOf.length) {
      chords.set(chord.name, own);
      slotOf.push(slot);
    }
    return own;
  });
  return { problem, chordOf, slotOf, stateAt };
};

/** The problem with each chord kept to the states allowed. */
export const within = ({ problem, chordOf }: ByChord, allowed: States): Problem => {
  // Slots of one chord mostly have the same array of what is open: one is made for all of them.
  const known = new Map<Uint8Array, Uint8Array>();
  return withOpen(
    problem,
    chordOf.map((chord, slot) => {
      const open = problem.layers.open(slot);
      const found = known.get(open);
      if (found) {
        return found;
      }
      const both = open.map((is, state) => is & (allowed[chord]?.[state] ?? 0));
      known.set(open, both);
      return both;
    }),
  );
};

/** The states that a path holds each chord in. */
export const homesOf = ({ problem, chordOf, slotOf }: ByChord, { choice }: Path): States => {
  const homes = slotOf.map((slot) => new Uint8Array(problem.layers.width(slot)));
  for (let slot = 0; slot < choice.length; slot += 1) {
    const home = homes[chordOf[slot] ?? 0];
    if (home) {
      home[choice[slot] ?? 0] = 1;
    }
  }
  return homes;
};

/** Whether some chord is never held in the same voicing by both. */
export const reallyDiffer = (a: States, b: States): boolean =>
  a.some((home, chord) => home.every((held, state) => !(held && b[chord]?.[state])));
