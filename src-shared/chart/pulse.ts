import { words } from "../wordTable.ts";
import type { Meter } from "./song.ts";

/**
 * How many eighth notes fill a bar.
 * @example eighthsIn({ beats: 2, unit: 2 }) // => 8
 */
export const eighthsIn = (meter: Meter): number => (meter.beats * 8) / meter.unit;

const eighthsOfBeat: Readonly<Record<Meter["unit"], number>> = { 2: 4, 4: 2, 8: 3 };

/**
 * Eighth notes in one beat: the note that a tempo counts and a foot taps. In 6/8 and 9/8 that
 * is the dotted quarter, two or three to a bar; elsewhere the unit of the signature.
 * @example eighthsInBeat({ beats: 6, unit: 8 }) // => 3
 */
export const eighthsInBeat = (meter: Meter): number => eighthsOfBeat[meter.unit];

/**
 * The note value that a tempo counts, in the plural.
 * @example beatNotes({ beats: 6, unit: 8 }) // => "dotted quarters"
 */
export const beatNotes = (meter: Pick<Meter, "unit">): string => words.tempo.notes[meter.unit];

/**
 * Eighth notes that a chart counts by: a dot is a quarter, in 2/2 too; in 6/8 and 9/8 it is an
 * eighth, six or nine to a bar. Our own chart language.
 * @example eighthsInDot({ beats: 2, unit: 2 }) // => 2
 */
export const eighthsInDot = (meter: Meter): 1 | 2 => (meter.unit === 8 ? 1 : 2);
