import type { BaseContext, Gain } from "tone";
import type { Hit } from "../../src-shared/score/score.ts";
import type { Seconds } from "../../src-shared/units.ts";
import type { Instrument, Voice } from "./instrument.ts";
import { Voices } from "./voices.ts";

const ACCENT_HZ = 1760;
const BEAT_HZ = 1175;
const LENGTH = 0.08;
/** Time constant of its decay, in seconds. */
const DECAY = 0.012;
const PEAK = 0.7;

const makeClick = (context: BaseContext, hz: number): AudioBuffer => {
  const { sampleRate } = context;
  const sound = Float32Array.from({ length: Math.round(LENGTH * sampleRate) }, (_, index) => {
    const time = (index + 1) / sampleRate;
    return PEAK * Math.sin(2 * Math.PI * hz * time) * Math.exp(-time / DECAY);
  });
  const buffer = context.createBuffer(1, sound.length, sampleRate);
  buffer.copyToChannel(sound, 0);
  return buffer;
};

/** A soft tick, higher on the first beat of a bar. */
export class Click implements Instrument<Hit> {
  readonly #context: BaseContext;
  readonly #voices: Voices;
  readonly #made = new Map<number, AudioBuffer>();

  constructor(context: BaseContext, output: Gain) {
    this.#context = context;
    this.#voices = new Voices(context, output);
  }

  get voices(): number {
    return this.#voices.count;
  }

  prepare(hits: readonly Hit[]): void {
    for (const hit of hits) {
      this.#recording(hit);
    }
  }

  strike(hit: Hit, time: Seconds): Voice {
    const attack = { level: 1, soft: false };
    return this.#voices.play(this.#recording(hit), time, attack);
  }

  silence(time: Seconds): void {
    this.#voices.silence(time);
  }

  dispose(): void {
    this.#voices.dispose();
    this.#made.clear();
  }

  #recording(hit: Hit): AudioBuffer {
    const hz = hit.accent ? ACCENT_HZ : BEAT_HZ;
    const buffer = this.#made.get(hz) ?? makeClick(this.#context, hz);
    this.#made.set(hz, buffer);
    return buffer;
  }
}
