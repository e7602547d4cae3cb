import { reformedFingers } from "../voicing/fingering.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { Aim } from "./route.ts";

/**
 * What one finger that changes string or is formed anew weighs under the aim `ease`, as hand travel
 * in micrometres: 60 mm. Moving along the neck and re-forming across it are two difficulties of
 * their own in published fingering work (Radicioni and Lombardo 2005), and no published constant
 * ties them together. This one is our choice: at 40 mm our own waltz in C never slides at all, at 60
 * three-chord songs are slid and minor chords and sevenths re-formed.
 */
export const REFORMED_FINGER_MICROMETRES = 60_000;

/** Hand travel between two voicings: distance of the index finger in whole micrometres. */
export const travelMicrometres = (from: Voicing, to: Voicing): number =>
  Math.abs(Math.round(1000 * to.positionMm) - Math.round(1000 * from.positionMm));

/** What an aim charges for going from one voicing to another, in whole micrometres; never negative. */
export const legMicrometres = (aim: Aim, from: Voicing, to: Voicing): number => {
  const travel = travelMicrometres(from, to);
  return aim === "travel"
    ? travel
    : travel + REFORMED_FINGER_MICROMETRES * reformedFingers(from, to).length;
};
