import type { BaseContext, Gain } from "tone";
import type { Hit } from "../../src-shared/score/score.ts";
import { type Seconds, seconds } from "../../src-shared/units.ts";
import { chordVoice } from "./chordVoice.ts";
import type { Instrument, Voice } from "./instrument.ts";
import { Recordings } from "./recordings.ts";
import { chopTimbre } from "./timbreTable.ts";
import { Voices } from "./voices.ts";

/** From one string to the next of a quick downstroke. */
const STRUM = 0.004;

/** A damped chord, strummed from the bottom. */
export class Chop implements Instrument<Hit> {
  readonly #voices: Voices;
  readonly #recordings: Recordings;

  constructor(context: BaseContext, output: Gain) {
    this.#voices = new Voices(context, output);
    this.#recordings = new Recordings(context, chopTimbre);
  }

  get voices(): number {
    return this.#voices.count;
  }

  prepare(hits: readonly Hit[]): void {
    this.#recordings.prepare(hits.flatMap((hit) => hit.pitches));
  }

  strike(hit: Hit, time: Seconds): Voice {
    const attack = { level: 1 / Math.sqrt(Math.max(1, hit.pitches.length)), soft: false };
    return chordVoice(
      hit.pitches.map((pitch, index) =>
        this.#voices.play(this.#recordings.of(pitch), seconds(time + index * STRUM), attack),
      ),
    );
  }

  silence(time: Seconds): void {
    this.#voices.silence(time);
  }

  dispose(): void {
    this.#voices.dispose();
    this.#recordings.forget();
  }
}
