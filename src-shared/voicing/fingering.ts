import type { PerString, StringNumber } from "../neck/neck.ts";
import { ofString } from "../neck/pitchAt.ts";
import type { Fret } from "../units.ts";
import type { Finger, Voicing } from "./voicing.ts";

/** Strings from the floor side's far end to the floor: how a hand reads a grip from low to high. */
const lowToHigh: readonly StringNumber[] = [4, 3, 2, 1];
const everyString: readonly StringNumber[] = [1, 2, 3, 4, 5];

type Stop = { readonly string: StringNumber; readonly fret: Fret };

const asPerString = (fingers: ReadonlyMap<StringNumber, Finger>): PerString<Finger | null> => [
  fingers.get(1) ?? null,
  fingers.get(2) ?? null,
  fingers.get(3) ?? null,
  fingers.get(4) ?? null,
  fingers.get(5) ?? null,
];

/**
 * Which finger stops each string of a closed grip, or null where four fingers do not suffice. The
 * index finger takes the lowest fret, as a barre where several strings lie there; the others follow
 * one to a fret, then from the low string to the high. A highest note on string 1, two frets or
 * more above the index, with string 3 off the index, goes to the little finger, as in the F shape.
 * Major forms: common practice, no published source; derived forms are a suggestion.
 */
export const fingering = (frets: PerString<Fret | null>): PerString<Finger | null> | null => {
  const stops: Stop[] = lowToHigh.flatMap((string) => {
    const fret = ofString(frets, string);
    return fret === null ? [] : [{ string, fret }];
  });
  const position = Math.min(...stops.map((stop) => stop.fret));
  const fingers = new Map<StringNumber, Finger>();
  for (const stop of stops) {
    if (stop.fret === position) {
      fingers.set(stop.string, 1);
    }
  }
  const above = stops.filter((stop) => stop.fret > position).toSorted((a, b) => a.fret - b.fret);
  if (above.length > 3) {
    return null;
  }
  let next = 2;
  for (const [index, stop] of above.entries()) {
    const stillToPlace = above.length - 1 - index;
    const onePerFret = Math.min(1 + stop.fret - position, 4 - stillToPlace);
    const finger = Math.max(next, onePerFret);
    fingers.set(stop.string, finger as Finger);
    next = finger + 1;
  }
  const last = above.at(-1);
  const indexIsBelowString1 = ofString(frets, 3) !== position;
  if (last?.string === 1 && last.fret - position >= 2 && indexIsBelowString1) {
    fingers.set(1, 4);
  }
  return asPerString(fingers);
};

/** Whether a finger holds the same strings in both grips, as far from the index as before. */
const stays = (from: Voicing, to: Voicing, finger: Finger): boolean => {
  for (const string of everyString) {
    const before = ofString(from.fingers, string) === finger;
    const after = ofString(to.fingers, string) === finger;
    if (before !== after) {
      return false;
    }
    const moved =
      (ofString(to.frets, string) ?? 0) -
      to.position -
      ((ofString(from.frets, string) ?? 0) - from.position);
    if (after && moved !== 0) {
      return false;
    }
  }
  return true;
};

const allFingers: readonly Finger[] = [1, 2, 3, 4];

/**
 * The fingers of the new grip that change string or are formed anew: all but those that keep their
 * strings and their place within the hand. Empty for a pure slide and for no move at all.
 */
export const reformedFingers = (from: Voicing, to: Voicing): readonly Finger[] =>
  allFingers.filter((finger) => to.fingers.includes(finger) && !stays(from, to, finger));
