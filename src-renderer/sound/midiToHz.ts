import type { Midi } from "../../src-shared/units.ts";

/** A pitch in hertz, in equal temperament from A4 = 440 Hz (ISO 16). */
export const midiToHz = (pitch: Midi): number => 440 * 2 ** ((pitch - 69) / 12);
