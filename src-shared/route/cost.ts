import { reformedFingers } from "../voicing/fingering.ts";
import type { Voicing } from "../voicing/voicing.ts";

/**
 * What one finger that changes string or is formed anew weighs under the aim `ease`, as hand travel
 * in micrometres: 60 mm. Moving along the neck and re-forming across it are two difficulties of
 * their own in published fingering work (Radicioni and Lombardo 2005), and no published constant
 * ties them together. This one is our choice: at 40 mm our own waltz in C never slides at all, at 60
 * three-chord songs are slid and minor chords and sevenths re-formed.
 */
export const REFORMED_FINGER_MICROMETRES = 60_000;

/** The index finger's way up the neck in whole micrometres; down is negative. */
export const riseMicrometres = (from: Voicing, to: Voicing): number =>
  Math.round(1000 * to.positionMm) - Math.round(1000 * from.positionMm);

/** Hand travel between two voicings: distance of the index finger in whole micrometres. */
export const travelMicrometres = (from: Voicing, to: Voicing): number =>
  Math.abs(riseMicrometres(from, to));

/** Travel, and the stated weight for each finger formed anew, in whole micrometres. */
export const easeMicrometres = (from: Voicing, to: Voicing): number =>
  travelMicrometres(from, to) + REFORMED_FINGER_MICROMETRES * reformedFingers(from, to).length;
