import type { Meter, TimedBar } from "../chart/song.ts";
import type { StringNumber } from "../neck/neck.ts";
import type { PickFinger } from "../roll/pattern.ts";
import type { Fret, Midi, Tick } from "../units.ts";

/** A note that goes on sounding while the hand slides: the pitch passes through the frets. */
export type Glide = {
  /** The hand leaves. */
  readonly start: Tick;
  /** The hand has arrived. */
  readonly end: Tick;
  readonly toFret: Fret;
};

/** One banjo note. */
export type Note = {
  readonly tick: Tick;
  /** Written length: until the next stroke of the roll. */
  readonly ticks: Tick;
  /** When it stops sounding: string picked again, finger lifted, or song over. Later than `tick`. */
  readonly until: Tick;
  readonly string: StringNumber;
  readonly fret: Fret;
  readonly midi: Midi;
  readonly finger: PickFinger;
  /** Struck louder than its neighbours. */
  readonly accent: boolean;
  /** Stopped at once, as the pinch of a vamp is. */
  readonly damped: boolean;
  /** The hand has just slid into this note. */
  readonly slideInto: boolean;
  /** The hand has already left: the stroke is heard short and damped. */
  readonly letGo: boolean;
  /** The hand slides on while this note still sounds; null where it does not. */
  readonly glide: Glide | null;
  /** Index of the placement it belongs to. */
  readonly placement: number;
};

/** The parts of the band that Shortslide plays around the banjo. */
export type Part = "bass" | "guitar" | "chop" | "click";

/** One stroke of the rhythm section. */
export type Hit = {
  readonly part: Part;
  readonly tick: Tick;
  readonly ticks: Tick;
  /** The pitches struck together; empty for a click. */
  readonly pitches: readonly Midi[];
  /** First beat of a bar. */
  readonly accent: boolean;
  /** How loud, above 0; 1 is usual. */
  readonly level: number;
};

/** Everything that sounds, each with its tick; all lists in order of tick. */
export type Score = {
  readonly meter: Meter;
  readonly length: Tick;
  readonly bars: readonly TimedBar[];
  readonly notes: readonly Note[];
  readonly hits: readonly Hit[];
};

/** A stretch of score time: `start` included, `end` not. */
export type Span = {
  readonly start: Tick;
  readonly end: Tick;
};
