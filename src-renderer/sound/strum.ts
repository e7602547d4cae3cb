import type { Hit } from "../../src-shared/score/score.ts";
import { type Seconds, seconds } from "../../src-shared/units.ts";
import { decibels } from "./decibels.ts";
import { midiToHz } from "./midiToHz.ts";
import { pluckedString, type Timbre } from "./pluckedString.ts";
import type { Made } from "./sounder.ts";

/** The first beat of a bar is a little louder. From memory. */
const ACCENT = decibels(1.4);

/** All pitches of a hit on one line, a downstroke from the lowest string up, as loud as one string. */
export const strum = (hit: Hit, timbre: Timbre, spread: Seconds): Made => ({
  line: 0,
  sounds: hit.pitches.map((pitch, index) => ({
    recording: {
      name: `${pitch}`,
      make: (sampleRate) => pluckedString(midiToHz(pitch), sampleRate, timbre),
    },
    after: seconds(index * spread),
    level: (hit.level * (hit.accent ? ACCENT : 1)) / Math.sqrt(hit.pitches.length),
    soft: false,
  })),
});
