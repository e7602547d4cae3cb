import type { Voice } from "./instrument.ts";

/** Several voices handled as one. */
export const chordVoice = (voices: readonly Voice[]): Voice => ({
  bend: (semitones, time) => {
    for (const voice of voices) {
      voice.bend(semitones, time);
    }
  },
  stop: (time) => {
    for (const voice of voices) {
      voice.stop(time);
    }
  },
});
