import type { Chord } from "../harmony/chord.ts";
import type { Millimetres, Milliseconds, Tick } from "../units.ts";
import type { Finger, Voicing } from "../voicing/voicing.ts";

/**
 * What the planner makes best. `travel`: least hand travel. `ease`: travel plus re-formed fingers.
 * `steady`: the hardest change as easy as can be, then all of them. `region`: the narrowest stretch
 * of the neck, then ease. `climb` and `fall`: no step back that can be helped, then as far as can
 * be, then ease. `variety`: a chord that comes back after one other takes another place, then ease.
 */
export type Aim = "ease" | "travel" | "steady" | "region" | "climb" | "fall" | "variety";

/**
 * How a change can be made in time: nothing moves; every note kept; the last note before it let go
 * early; an open fifth string sounding while the hand is on its way; the last two notes let go; not at
 * this tempo.
 */
export type Way = "hold" | "keep" | "let-one" | "open" | "let-two" | "too-fast";

/** One chord held in one voicing for a while. */
export type Placement = {
  readonly index: number;
  /** 0-based among the stays as played; two placements may share one. */
  readonly stay: number;
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
  readonly way: Way;
  /** The time that the hand needs. */
  readonly need: Milliseconds;
  /** The time that the way leaves it; where it is too fast, the longest there is. */
  readonly window: Milliseconds;
  /** The shortest eighth note at which it can be made at all; null where nothing moves. */
  readonly shortestEighth: Milliseconds | null;
};

/** A song's route over the neck. */
export type Route = {
  readonly aim: Aim;
  readonly placements: readonly Placement[];
  /** One between each two neighbours, and the seam last where the route goes round. */
  readonly legs: readonly Leg[];
  readonly travel: Millimetres;
  /** What the route comes to by each criterion of its aim, whole numbers, the first the weightiest. */
  readonly costs: readonly number[];
};
