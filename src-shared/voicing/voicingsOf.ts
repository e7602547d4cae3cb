import type { Chord, ChordTone, ToneRole } from "../harmony/chord.ts";
import { fretDistance } from "../neck/fretDistance.ts";
import type { Neck, PerString, StringNumber } from "../neck/neck.ts";
import { lowestFret, pitchAt } from "../neck/pitchAt.ts";
import { type Fret, fret } from "../units.ts";
import { fingering } from "./fingering.ts";
import { reachOnNeck } from "./reach.ts";
import type { ShapeName, StringSet, Voicing } from "./voicing.ts";

/** Frets that a finger may stop, both included. */
export type FretRange = { readonly low: Fret; readonly high: Fret };

type Sounding = {
  readonly string: StringNumber;
  readonly fret: Fret;
  readonly pitch: number;
  readonly tone: ChordTone;
};

/** The string that has the third (or the tone in its place) tells the shape, whatever was replaced. */
const shapeByThird: readonly (readonly [StringNumber, ShapeName])[] = [
  [3, "F"],
  [2, "barre"],
  [1, "D"],
  [4, "D"],
];

const stringsOf: Readonly<Record<StringSet, readonly StringNumber[]>> = {
  "3-2-1": [3, 2, 1],
  "4-3-2": [4, 3, 2],
  "4-3-2-1": [4, 3, 2, 1],
};

const soundings = (
  chord: Chord,
  neck: Neck,
  range: FretRange,
  string: StringNumber,
): readonly Sounding[] => {
  const low = Math.max(range.low, lowestFret(neck));
  const high = Math.min(range.high, neck.lastFret);
  const found: Sounding[] = [];
  for (let n = low; n <= high; n += 1) {
    const pitch = pitchAt(neck, { string, fret: fret(n) });
    const tone = chord.tones.find((each) => each.pitchClass === pitch % 12);
    if (tone) {
      found.push({ string, fret: fret(n), pitch, tone });
    }
  }
  return found;
};

/**
 * Whether the tones that sound stand for the chord. A triad needs all of its tones. A chord of four
 * keeps third and seventh and may leave out the fifth or the root; a 6 leaves out only the fifth
 * (without its root it is another chord), a m7b5 only the root (its flat fifth is its name).
 */
const standsFor = (chord: Chord, grip: readonly Sounding[]): boolean => {
  const roles = new Set<ToneRole>(grip.map(({ tone }) => tone.role));
  if (roles.size < 3 || !roles.has("third")) {
    return false;
  }
  if (chord.tones.length === 3) {
    return true;
  }
  if (!roles.has("seventh")) {
    return false;
  }
  if (chord.quality === "6") {
    return roles.has("root");
  }
  return chord.quality !== "m7b5" || roles.has("fifth");
};

/** Within an octave: a closed shape, since its pitches rise. A fourth string may lie below it. */
const isClosed = (grip: readonly Sounding[]): boolean => {
  const upper = grip.slice(-3);
  return (upper.at(-1)?.pitch ?? 0) - (upper[0]?.pitch ?? 0) < 12;
};

const voicingFrom = (grip: readonly Sounding[], neck: Neck): Voicing | null => {
  const at = (string: StringNumber): Fret | null =>
    grip.find((each) => each.string === string)?.fret ?? null;
  const frets: PerString<Fret | null> = [at(1), at(2), at(3), at(4), null];
  const fingers = fingering(frets);
  if (fingers === null) {
    return null;
  }
  const thirds = grip.filter(({ tone }) => tone.role === "third");
  const shape = shapeByThird.find(([string]) => thirds.some((each) => each.string === string))?.[1];
  if (shape === undefined) {
    throw new Error("a voicing without a third or a tone in its place has no shape");
  }
  const root = grip.findLast(({ tone }) => tone.role === "root");
  const position = fret(Math.min(...grip.map((each) => each.fret)));
  return {
    shape,
    frets,
    fingers,
    position,
    positionMm: fretDistance(position, neck.scaleLength),
    root: root === undefined ? null : { string: root.string, fret: root.fret },
  };
};

/** Every way to sound one tone on each string, rising, as long as it can still be reached. */
const grips = (
  byString: readonly (readonly Sounding[])[],
  neck: Neck,
): readonly (readonly Sounding[])[] => {
  const reach = reachOnNeck(neck);
  const goesOn = (grip: readonly Sounding[], { pitch, fret: added }: Sounding): boolean =>
    pitch > (grip.at(-1)?.pitch ?? -1) &&
    grip.every((each) => Math.max(each.fret, added) <= (reach[Math.min(each.fret, added)] ?? 0));
  return byString.reduce<readonly (readonly Sounding[])[]>(
    (begun, onString) =>
      begun.flatMap((grip) =>
        onString.filter((each) => goesOn(grip, each)).map((each) => [...grip, each]),
      ),
    [[]],
  );
};

const shapeOrder: readonly ShapeName[] = ["F", "D", "barre"];

/** A stated order of voicings: by position, then F, D, barre, then frets from string 4 to string 1. */
const inOrder = (a: Voicing, b: Voicing): number =>
  a.position - b.position ||
  shapeOrder.indexOf(a.shape) - shapeOrder.indexOf(b.shape) ||
  (a.frets[3] ?? 0) - (b.frets[3] ?? 0) ||
  (a.frets[2] ?? 0) - (b.frets[2] ?? 0) ||
  (a.frets[1] ?? 0) - (b.frets[1] ?? 0) ||
  (a.frets[0] ?? 0) - (b.frets[0] ?? 0);

/**
 * Every closed voicing of a chord on a set of strings: no open string, rising pitches, the upper
 * three within an octave, all frets within the range (both ends included) and above the capo, no
 * wider than WIDEST_GRIP, and four fingers suffice. Computed from the chord's tones for any tuning;
 * in a stated order; empty where the range holds none.
 */
export const voicingsOf = (
  chord: Chord,
  neck: Neck,
  range: FretRange,
  strings: StringSet,
): readonly Voicing[] =>
  grips(
    stringsOf[strings].map((string) => soundings(chord, neck, range, string)),
    neck,
  )
    .filter((grip) => isClosed(grip) && standsFor(chord, grip))
    .flatMap((grip) => voicingFrom(grip, neck) ?? [])
    .toSorted(inOrder);
