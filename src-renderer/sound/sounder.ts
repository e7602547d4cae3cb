import { type Seconds, seconds } from "../../src-shared/units.ts";
import { chordVoice } from "./chordVoice.ts";
import type { Instrument, Voice } from "./instrument.ts";
import { Lines } from "./lines.ts";
import { type Recording, Recordings } from "./recordings.ts";
import { type Attack, Voices } from "./voices.ts";

/** One string of a stroke. */
export type Sound = Attack & {
  readonly recording: Recording;
  /** How much later than the stroke itself. */
  readonly after: Seconds;
};

/** What a stroke is made of. */
export type Made = {
  /** The stroke ends the one before on the same line. */
  readonly line: number;
  readonly sounds: readonly Sound[];
};

/** An instrument whose strokes are recordings, as `madeOf` says. */
export class Sounder<Stroke> implements Instrument<Stroke> {
  readonly #madeOf: (stroke: Stroke) => Made;
  readonly #voices: Voices;
  readonly #recordings: Recordings;
  readonly #lines: Lines;

  constructor(context: BaseAudioContext, output: AudioNode, madeOf: (stroke: Stroke) => Made) {
    this.#madeOf = madeOf;
    this.#voices = new Voices(context, output);
    this.#recordings = new Recordings(context);
    this.#lines = new Lines(() => seconds(context.currentTime));
  }

  /** Voices that sound now or are to. */
  get voices(): number {
    return this.#voices.count;
  }

  prepare(strokes: readonly Stroke[]): void {
    for (const { recording } of strokes.flatMap((stroke) => this.#madeOf(stroke).sounds)) {
      this.#recordings.of(recording);
    }
  }

  strike(stroke: Stroke, time: Seconds): Voice {
    const { line, sounds } = this.#madeOf(stroke);
    const voices = sounds.map((sound) =>
      this.#voices.play(this.#recordings.of(sound.recording), seconds(time + sound.after), sound),
    );
    const [first] = voices;
    const voice = first && voices.length === 1 ? first : chordVoice(time, voices);
    this.#lines.strike(line, voice);
    return voice;
  }

  recall(from: Seconds): void {
    this.#lines.recall(from);
  }

  silence(time: Seconds): void {
    this.#voices.silence(time);
    this.#lines.clear();
  }

  dispose(): void {
    this.#voices.dispose();
    this.#recordings.forget();
    this.#lines.clear();
  }
}
