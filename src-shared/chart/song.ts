import type { Chord } from "../harmony/chord.ts";
import type { Key } from "../harmony/key.ts";
import type { Bpm, Fret, Tick } from "../units.ts";

/**
 * A time signature as written: 4/4, 3/4, 2/4, 2/2, 6/8 or 9/8; `unit` 2 is a half note, 4 a quarter,
 * 8 an eighth. What is counted and tapped is the beat of `pulse.ts`: of eighths the dotted quarter.
 */
export type Meter = {
  readonly beats: number;
  readonly unit: 2 | 4 | 8;
};

/** One chord (or silence) for a while, within one written bar. */
export type Stay = {
  /** The symbol as the chart has it, in canonical spelling: "Em", "6m", "N.C.". */
  readonly symbol: string;
  /** The chord as it sounds in the song's key; null for N.C. */
  readonly chord: Chord | null;
  /** How long, in eighth notes; at least 1. */
  readonly eighths: number;
};

/** One written bar; its stays fill it exactly. */
export type Bar = {
  readonly stays: readonly Stay[];
  /** A repeat starts at this bar's left bar line. */
  readonly opensRepeat: boolean;
  /** How many times the passage that ends with this bar is played; 1 where no repeat ends here. */
  readonly plays: number;
  /** The passes on which the ending that starts at this bar is played; null where none starts. */
  readonly ending: readonly number[] | null;
  /** An ending stops at this bar's right bar line (a repeat's end always stops it). */
  readonly endsEnding: boolean;
};

/** Bars under one label; a chart that starts without a label has null there. */
export type Section = {
  readonly label: string | null;
  readonly bars: readonly Bar[];
};

/** A song as its chart writes it: repeats and form not yet played out. */
export type Song = {
  readonly title: string;
  readonly key: Key;
  readonly meter: Meter;
  /** Beats of the meter per minute: quarters in 4/4, half notes in 2/2, dotted quarters in 6/8 and 9/8. */
  readonly tempo: Bpm;
  /** 0 is no capo. */
  readonly capo: Fret;
  /** Name of a tuning in neck/tuningTable.ts. */
  readonly tuning: string;
  /** Section labels in the order they are played; null plays the sections as written. */
  readonly form: readonly string[] | null;
  readonly sections: readonly Section[];
};

/** One bar of the song as it is played. */
export type TimedBar = {
  /** 0-based place in the song as played. */
  readonly index: number;
  readonly start: Tick;
  readonly length: Tick;
  /** Label of its section, or null. */
  readonly section: string | null;
  /** This bar is the first of its section as played. */
  readonly startsSection: boolean;
  /** 0-based number of the written bar that is played here, over all sections as written. */
  readonly written: number;
};

/** One chord for a while in the song as played; may last over bar lines. */
export type TimedStay = {
  /** null is N.C. */
  readonly chord: Chord | null;
  readonly start: Tick;
  readonly length: Tick;
  /** 0-based index of the TimedBar it starts in. */
  readonly bar: number;
};

/** The song as played, straight through. */
export type Timeline = {
  readonly meter: Meter;
  readonly bars: readonly TimedBar[];
  /** Neighbours never have the same chord; together they last as long as the bars. */
  readonly stays: readonly TimedStay[];
  readonly length: Tick;
};
