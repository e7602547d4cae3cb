import type { PerString, Place } from "../neck/neck.ts";
import type { Fret, Millimetres } from "../units.ts";

/**
 * The movable shape a voicing comes from, by its trade name in open G: the root (or the tone put
 * in its place) lies on string 1 in the F shape, on string 2 in the D shape, on string 3 in the
 * barre shape; the full shapes add string 4. Common practice, no published source. In any tuning
 * the key means where the root lies; what a player is told is for `wording/sayShape.ts` to decide.
 */
export type ShapeName = "F" | "D" | "barre";

/** Which strings a voicing sounds, the lowest first. */
export type StringSet = "3-2-1" | "4-3-2" | "4-3-2-1";

/** A left-hand finger: 1 index, 2 middle, 3 ring, 4 little. */
export type Finger = 1 | 2 | 3 | 4;

/** A closed grip on the neck. Values by string, string 1 first; null where it is not played. */
export type Voicing = {
  readonly shape: ShapeName;
  readonly frets: PerString<Fret | null>;
  readonly fingers: PerString<Finger | null>;
  /** The lowest fretted fret, which the index finger covers. */
  readonly position: Fret;
  /** Nut to the fret wire of the position. */
  readonly positionMm: Millimetres;
  /** Where the root is; null where the voicing leaves the root to the bass. */
  readonly root: Place | null;
};
