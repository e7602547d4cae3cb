/**
 * Branded quantities. The ground floor: imports nothing, and is the only file that may cast.
 * Arithmetic on a quantity gives a plain number; name the unit again when the result has one.
 */

declare const unit: unique symbol;
type Quantity<Name extends string> = number & { readonly [unit]: Name };

/** Score time: whole ticks, 480 to a quarter note; negative before the first bar (count-in). */
export type Tick = Quantity<"tick">;
/** Clock time in seconds. */
export type Seconds = Quantity<"second">;
/** A movement's time in milliseconds. */
export type Milliseconds = Quantity<"ms">;
/** A fret counted from the nut; 0 is the nut (or the capo, where one is on). */
export type Fret = Quantity<"fret">;
/** A pitch as a MIDI note number; 60 is middle C (C4), 69 is A4 = 440 Hz. */
export type Midi = Quantity<"midi">;
/** A length in millimetres. */
export type Millimetres = Quantity<"mm">;
/** Beats per minute; which note value is the beat stands beside each use. */
export type Bpm = Quantity<"bpm">;

/** Ticks in one quarter note: divides by 2, 3 and 5. */
export const TICKS_PER_QUARTER = 480;
/** Ticks in one eighth note, the grid of every roll. */
export const TICKS_PER_EIGHTH = 240;

/**
 * Names a number as score time.
 * @example tick(480) // => 480
 */
export const tick = (n: number): Tick => n as Tick;

/**
 * Names a number as seconds.
 * @example seconds(0.5) // => 0.5
 */
export const seconds = (n: number): Seconds => n as Seconds;

/**
 * Names a number as milliseconds.
 * @example milliseconds(207) // => 207
 */
export const milliseconds = (n: number): Milliseconds => n as Milliseconds;

/**
 * Names a number as a fret counted from the nut.
 * @example fret(7) // => 7
 */
export const fret = (n: number): Fret => n as Fret;

/**
 * Names a number as a MIDI pitch.
 * @example midi(69) // => 69
 */
export const midi = (n: number): Midi => n as Midi;

/**
 * Names a number as millimetres.
 * @example millimetres(666.75) // => 666.75
 */
export const millimetres = (n: number): Millimetres => n as Millimetres;

/**
 * Names a number as beats per minute.
 * @example bpm(110) // => 110
 */
export const bpm = (n: number): Bpm => n as Bpm;
