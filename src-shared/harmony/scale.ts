import { Key as TonalKey } from "tonal";
import type { Chord } from "./chord.ts";
import type { Key } from "./key.ts";
import { pitchClassOf } from "./noteName.ts";

/**
 * Pitch classes (0 to 11) of a key's scale from its tonic up: major, or natural minor. As tonal has it.
 * @example scaleOf({ tonic: "G", mode: "major" }) // => [7, 9, 11, 0, 2, 4, 6]
 */
export const scaleOf = (key: Key): readonly number[] =>
  (key.mode === "major"
    ? TonalKey.majorKey(key.tonic).scale
    : TonalKey.minorKey(key.tonic).natural.scale
  ).map(pitchClassOf);

/**
 * The scale a line takes under a chord: the key's, where the chord's own tones stand in for the notes
 * a semitone beside them. Under A7 in G that is C# for C. In rising order from C. Common practice, no
 * published source.
 * @example scaleUnder({ tones: [{ pitchClass: 9 }, { pitchClass: 1 }, { pitchClass: 4 }] }, { tonic: "G", mode: "major" }) // => [1, 2, 4, 6, 7, 9, 11]
 */
export const scaleUnder = (
  chord: { readonly tones: readonly Pick<Chord["tones"][number], "pitchClass">[] },
  key: Key,
): readonly number[] => {
  const scale = scaleOf(key);
  const own = chord.tones.map((tone) => tone.pitchClass);
  const foreign = own.filter((tone) => !scale.includes(tone));
  const beside = new Set(foreign.flatMap((tone) => [(tone + 1) % 12, (tone + 11) % 12]));
  const kept = scale.filter((note) => own.includes(note) || !beside.has(note));
  return [...new Set([...kept, ...own])].toSorted((a, b) => a - b);
};
