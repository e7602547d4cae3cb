import { fretDistance } from "../neck/fretDistance.ts";
import type { Neck } from "../neck/neck.ts";
import { type Fret, fret, type Millimetres, millimetres } from "../units.ts";

/**
 * The widest grip that voicings may ask for: index to little finger, along the neck. Four frets at
 * fret 1 are just within it. From memory, no published source; hands differ.
 */
export const WIDEST_GRIP: Millimetres = millimetres(105);

/** How far apart two frets are on a neck of that scale length, never negative. */
export const gripSpan = (low: Fret, high: Fret, scaleLength: Millimetres): Millimetres =>
  millimetres(Math.abs(fretDistance(high, scaleLength) - fretDistance(low, scaleLength)));

/** For each fret from the nut on, the highest fret of the neck that WIDEST_GRIP reaches from it. */
export const reachOnNeck = ({
  lastFret,
  scaleLength,
}: Pick<Neck, "lastFret" | "scaleLength">): readonly Fret[] => {
  const wires = Array.from({ length: lastFret + 1 }, (_, n) => fretDistance(fret(n), scaleLength));
  return wires.map((from) => fret(wires.findLastIndex((wire) => wire - from <= WIDEST_GRIP)));
};
