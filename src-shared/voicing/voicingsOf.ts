import type { Chord, ChordTone, ToneRole } from "../harmony/chord.ts";
import { fretDistance } from "../neck/fretDistance.ts";
import type { Neck, PerString, StringNumber } from "../neck/neck.ts";
import { lowestFret, pitchAt } from "../neck/pitchAt.ts";
import { type Fret, fret } from "../units.ts";
import { fingering } from "./fingering.ts";
import { gripSpan, WIDEST_GRIP } from "./reach.ts";
import type { ShapeName, Voicing } from "./voicing.ts";

/** Frets that a finger may stop, both included. */
export type FretRange = { readonly low: Fret; readonly high: Fret };

type Sounding = { readonly fret: Fret; readonly pitch: number; readonly tone: ChordTone };

/** The string that has the third (or the tone in its place) tells the shape, whatever was replaced. */
const shapeByThird: Readonly<Record<1 | 2 | 3, ShapeName>> = { 3: "F", 1: "D", 2: "barre" };

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
      found.push({ fret: fret(n), pitch, tone });
    }
  }
  return found;
};

/**
 * Whether three tones stand for the chord. A triad needs all of its tones. A chord of four keeps
 * third and seventh and leaves out the fifth or the root; a 6 leaves out only the fifth (without its
 * root it is another chord), a m7b5 only the root (its flat fifth is its name).
 */
const standsFor = (chord: Chord, roles: ReadonlySet<ToneRole>): boolean => {
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

const within = (low: Sounding, middle: Sounding, high: Sounding, neck: Neck): boolean => {
  const frets = [low.fret, middle.fret, high.fret];
  const closePosition =
    low.pitch < middle.pitch && middle.pitch < high.pitch && high.pitch - low.pitch < 12;
  return (
    closePosition &&
    gripSpan(fret(Math.min(...frets)), fret(Math.max(...frets)), neck.scaleLength) <= WIDEST_GRIP
  );
};

const voicingFrom = (
  low: Sounding,
  middle: Sounding,
  high: Sounding,
  neck: Neck,
): Voicing | null => {
  const frets: PerString<Fret | null> = [high.fret, middle.fret, low.fret, null, null];
  const fingers = fingering(frets);
  if (fingers === null) {
    return null;
  }
  const byString = { 3: low, 2: middle, 1: high } as const;
  const strings = [1, 2, 3] as const;
  const third = strings.find((string) => byString[string].tone.role === "third");
  if (third === undefined) {
    throw new Error("a voicing without a third or a tone in its place has no shape");
  }
  const root = strings.find((string) => byString[string].tone.role === "root");
  const position = fret(Math.min(low.fret, middle.fret, high.fret));
  return {
    shape: shapeByThird[third],
    frets,
    fingers,
    position,
    positionMm: fretDistance(position, neck.scaleLength),
    root: root === undefined ? null : { string: root, fret: byString[root].fret },
  };
};

const shapeOrder: readonly ShapeName[] = ["F", "D", "barre"];

/** A stated order of voicings: by position, then F, D, barre, then frets from string 3 to string 1. */
const inOrder = (a: Voicing, b: Voicing): number =>
  a.position - b.position ||
  shapeOrder.indexOf(a.shape) - shapeOrder.indexOf(b.shape) ||
  (a.frets[2] ?? 0) - (b.frets[2] ?? 0) ||
  (a.frets[1] ?? 0) - (b.frets[1] ?? 0) ||
  (a.frets[0] ?? 0) - (b.frets[0] ?? 0);

/**
 * Every closed voicing of a chord on strings 3, 2 and 1: no open string, close position (less than
 * an octave from string 3 to string 1), all frets within the range (both ends included) and above
 * the capo, no wider than WIDEST_GRIP. Computed from the chord's tones for any tuning; in a stated
 * order; empty where the range holds none.
 */
export const voicingsOf = (chord: Chord, neck: Neck, range: FretRange): readonly Voicing[] => {
  const found: Voicing[] = [];
  const onString1 = soundings(chord, neck, range, 1);
  const onString2 = soundings(chord, neck, range, 2);
  for (const low of soundings(chord, neck, range, 3)) {
    for (const middle of onString2) {
      for (const high of onString1) {
        const roles = new Set([low.tone.role, middle.tone.role, high.tone.role]);
        if (standsFor(chord, roles) && within(low, middle, high, neck)) {
          const voicing = voicingFrom(low, middle, high, neck);
          if (voicing) {
            found.push(voicing);
          }
        }
      }
    }
  }
  return found.toSorted(inOrder);
};
