import type { Place } from "../../src-shared/neck/neck.ts";
import { SHORT_STRING_NUT } from "../../src-shared/neck/pitchAt.ts";
import { fingerX, type NeckView, type StringView, stringY, upward, wireX } from "./neckGeometry.ts";

/** What a learner wants to see on the neck. */
export type NeckAids = {
  /** Every root of the chord held now. */
  readonly roots: readonly Place[];
  /** Every place, with its note's name; empty unless asked for. */
  readonly notes: readonly {
    readonly place: Place;
    readonly name: string;
    readonly inChord: boolean;
  }[];
};

/** Nothing asked for. */
export const noAids: NeckAids = { roots: [], notes: [] };

/** From the nut on to the mark of an open string, and from a capo or the short string's peg back to it. */
const ON = 12;
const BACK = 20;

/** Where a place lies on the screen, an open string before its nut; null where it is not shown. */
export const placeOnNeck = (
  place: Place,
  capo: number,
  view: NeckView,
  strings: StringView,
): { readonly x: number; readonly y: number } | null => {
  const { low, high } = view.frets;
  const y = stringY(strings, place.string);
  if (place.fret > 0) {
    const shown = place.fret > low && place.fret <= high;
    return shown ? { x: fingerX(view, place.fret), y } : null;
  }
  const nut = capo + (place.string === 5 ? SHORT_STRING_NUT : 0);
  if (nut < low || nut > high) return null;
  return { x: wireX(view, nut) + upward(view) * (nut === 0 ? ON : -BACK), y };
};
