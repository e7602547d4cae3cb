import type { Seconds } from "../../src-shared/units.ts";

/** What can still be done with a sound after it was struck. Times are audio time. */
export interface Voice {
  /** When it sets in. */
  readonly start: Seconds;
  /** Moves the pitch to so many semitones above where it was struck, there at `time`. */
  bend(semitones: number, time: Seconds): void;
  /** Damps it from `time` on; a later time than one given before changes nothing. */
  stop(time: Seconds): void;
  /** Takes back every bend and stop from `from` on. */
  recall(from: Seconds): void;
  /** Takes back the stroke, before it sets in. */
  cancel(): void;
}

/** What every sounding class keeps. Times are audio time, never before the present. */
export interface Instrument<Stroke> {
  /** Makes ready what these strokes need, so that striking them costs next to nothing. */
  prepare(strokes: readonly Stroke[]): void;
  /** Sounds one stroke, its first sample exactly at `time`. Strokes come in order of time. */
  strike(stroke: Stroke, time: Seconds): Voice;
  /** Takes back the strokes from `from` on, and what was to happen to earlier ones from then on. */
  recall(from: Seconds): void;
  /** Damps what sounds at `time` and takes back all that was to start later. */
  silence(time: Seconds): void;
  /** Stops at once and lets go of every node. */
  dispose(): void;
}
