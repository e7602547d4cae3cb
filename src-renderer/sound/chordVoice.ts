import type { Seconds } from "../../src-shared/units.ts";
import type { Voice } from "./instrument.ts";

/** Several voices handled as the one stroke at `start`, though a strum brings some in later. */
export const chordVoice = (start: Seconds, voices: readonly Voice[]): Voice => {
  const each = (act: (voice: Voice) => void) => (): void => voices.forEach(act);
  return {
    start,
    bend: (semitones, time) => each((voice) => voice.bend(semitones, time))(),
    stop: (time) => each((voice) => voice.stop(time))(),
    recall: (from) => each((voice) => voice.recall(from))(),
    cancel: each((voice) => voice.cancel()),
  };
};
