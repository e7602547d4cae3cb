import { type Midi, midi } from "../../units.ts";
import { BASS_LOW } from "./chordPitches.ts";

/** Farther than this below a note lie no three notes of a scale that one would walk. */
const WALK_REACH = 7;

const pitchesBetween = (from: number, to: number): readonly number[] => {
  const step = Math.sign(to - from);
  return Array.from({ length: Math.max(0, Math.abs(to - from) - 1) }, (_, at) => {
    return from + step * (at + 1);
  });
};

/**
 * Two or three bass notes (`count` at most) that lead from one bass note to the next one, step by step
 * along a scale of pitch classes, up or down; the last lies next to `to`. Over a whole tone the last
 * step is chromatic, and where only one note lies between the walk sets out from `from` itself. Onto
 * the same note again it comes from below, or from above where the bass has no room below. Empty where
 * nothing lies between. Common practice, no published source.
 * @example walkInto(31, 36, [0, 2, 4, 6, 7, 9, 11], 2) // => [33, 35]
 */
export const walkInto = (
  from: Midi,
  to: Midi,
  scale: readonly number[],
  count: 2 | 3,
): readonly Midi[] => {
  const inScale = (pitch: number): boolean => scale.includes(pitch % 12);
  if (from === to) {
    const below = pitchesBetween(to - WALK_REACH, to)
      .filter(inScale)
      .slice(-count);
    const above = pitchesBetween(to + WALK_REACH, to)
      .filter(inScale)
      .slice(-count);
    return ((below[0] ?? 0) >= BASS_LOW ? below : above).map(midi);
  }
  const between = pitchesBetween(from, to);
  const last = between.at(-1);
  if (last === undefined) {
    return [];
  }
  const steps = between.filter(inScale);
  const walked = steps.length > 0 && between.length > 1 ? steps : [last];
  return (walked.length > 1 ? walked.slice(-count) : [from, ...walked]).map(midi);
};
