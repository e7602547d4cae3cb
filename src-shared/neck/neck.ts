import type { Fret, Midi, Millimetres } from "../units.ts";

/**
 * Strings are numbered as on every printed tablature: 1 is the highest-sounding long string,
 * 4 the lowest, 5 the short drone whose peg sits at the fifth fret.
 */
export type StringNumber = 1 | 2 | 3 | 4 | 5;

/** One value for each string, string 1 first: index = string number - 1. */
export type PerString<T> = readonly [T, T, T, T, T];

/** A named tuning: the open pitches without a capo, string 1 first. */
export type Tuning = {
  readonly name: string;
  readonly open: PerString<Midi>;
};

/** The instrument as it is set up for a song. */
export type Neck = {
  readonly tuning: Tuning;
  /** Fret of the capo on strings 4 to 1; 0 is none. The fifth string is raised by as much. */
  readonly capo: Fret;
  /** Nut to bridge. */
  readonly scaleLength: Millimetres;
  /** The last fret there is. */
  readonly lastFret: Fret;
};

/** Where a finger stops a string. Frets count from the nut, also above a capo. */
export type Place = {
  readonly string: StringNumber;
  readonly fret: Fret;
};
