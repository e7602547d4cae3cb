import { Key as TonalKey } from "tonal";
import type { Chord } from "./chord.ts";
import type { Key } from "./key.ts";
import { pitchClassOf } from "./noteName.ts";

const namesOf = (key: Key): readonly string[] =>
  key.mode === "major"
    ? TonalKey.majorKey(key.tonic).scale
    : TonalKey.minorKey(key.tonic).natural.scale;

/**
 * Pitch classes (0 to 11) of a key's scale from its tonic up: major, or natural minor. As tonal has it.
 * @example scaleOf({ tonic: "G", mode: "major" }) // => [7, 9, 11, 0, 2, 4, 6]
 */
export const scaleOf = (key: Key): readonly number[] => namesOf(key).map(pitchClassOf);

const letters = "CDEFGAB";
/** Letters from the root up to a tone so many semitones above it: a third is two, raised or lowered. */
const lettersUp = [0, 1, 1, 2, 2, 3, 4, 4, 4, 5, 6, 6];

/**
 * The scale a line takes under a chord: the key's, where a tone of the chord stands in for the scale's
 * note on the same letter. Under A7 in G that is C# for C. In rising order from C. Common practice, no
 * published source.
 * @example scaleUnder({ root: "A", tones: [{ semitones: 0, pitchClass: 9 }, { semitones: 4, pitchClass: 1 }] }, { tonic: "G", mode: "major" }) // => [1, 2, 4, 6, 7, 9, 11]
 */
export const scaleUnder = (
  chord: {
    readonly root: string;
    readonly tones: readonly Pick<Chord["tones"][number], "semitones" | "pitchClass">[];
  },
  key: Key,
): readonly number[] => {
  const from = letters.indexOf(chord.root.charAt(0));
  const own = new Map(
    chord.tones.map((tone) => [
      letters.charAt((from + (lettersUp[tone.semitones] ?? 0)) % letters.length),
      tone.pitchClass,
    ]),
  );
  const notes = namesOf(key).map((name) => own.get(name.charAt(0)) ?? pitchClassOf(name));
  return [...new Set([...notes, ...own.values()])].toSorted((a, b) => a - b);
};
