import type { BaseContext, Gain } from "tone";
import type { Hit } from "../../src-shared/score/score.ts";
import type { Seconds } from "../../src-shared/units.ts";
import { chordVoice } from "./chordVoice.ts";
import type { Instrument, Voice } from "./instrument.ts";
import { Recordings } from "./recordings.ts";
import { bassTimbre } from "./timbreTable.ts";
import { Voices } from "./voices.ts";

const UNACCENTED = 0.85;

/** One line: each stroke ends the one before. */
export class Bass implements Instrument<Hit> {
  readonly #voices: Voices;
  readonly #recordings: Recordings;
  #ringing: Voice | null = null;

  constructor(context: BaseContext, output: Gain) {
    this.#voices = new Voices(context, output);
    this.#recordings = new Recordings(context, bassTimbre);
  }

  get voices(): number {
    return this.#voices.count;
  }

  prepare(hits: readonly Hit[]): void {
    this.#recordings.prepare(hits.flatMap((hit) => hit.pitches));
  }

  strike(hit: Hit, time: Seconds): Voice {
    this.#ringing?.stop(time);
    const attack = { level: hit.accent ? 1 : UNACCENTED, soft: false };
    this.#ringing = chordVoice(
      hit.pitches.map((pitch) => this.#voices.play(this.#recordings.of(pitch), time, attack)),
    );
    return this.#ringing;
  }

  silence(time: Seconds): void {
    this.#voices.silence(time);
    this.#ringing = null;
  }

  dispose(): void {
    this.#voices.dispose();
    this.#recordings.forget();
    this.#ringing = null;
  }
}
