import type { Chord } from "../harmony/chord.ts";
import type { Millimetres, Tick } from "../units.ts";
import type { Finger, Voicing } from "../voicing/voicing.ts";

/** What the planner makes small. `travel`: hand travel in mm. `ease`: travel plus re-formed fingers. */
export type Aim = "ease" | "travel";

/** One chord held in one voicing for a while. */
export type Placement = {
  readonly index: number;
  /** 0-based bar of the song as played in which it starts. */
  readonly bar: number;
  readonly start: Tick;
  readonly length: Tick;
  readonly chord: Chord;
  readonly voicing: Voicing;
};

/** How the hand gets from one placement to the next. */
export type Leg = {
  /** Index of the placement that is left. */
  readonly from: number;
  /** Index of the placement that is reached; 0 again where the song goes round. */
  readonly to: number;
  /** hold: nothing moves; slide: every finger keeps its string; reshape: at least one does not. */
  readonly kind: "hold" | "slide" | "reshape";
  /** Frets of the index finger, up the neck positive. */
  readonly frets: number;
  /** Distance of the index finger, never negative. */
  readonly distance: Millimetres;
  /** Fingers of the new grip that change string or are formed anew. */
  readonly reformed: readonly Finger[];
  /** From the last placement back to the first. */
  readonly seam: boolean;
};

/** A song's route over the neck. */
export type Route = {
  readonly aim: Aim;
  readonly placements: readonly Placement[];
  /** One between each two neighbours, and the seam last where the route goes round. */
  readonly legs: readonly Leg[];
  readonly travel: Millimetres;
  /** What the aim's cost adds up to, in millimetres and their stated equivalents. */
  readonly cost: Millimetres;
};
