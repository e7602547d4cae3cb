import { type BaseContext, connect, Gain } from "tone";
import type { MixPart, Preferences } from "../../src-shared/settings.ts";
import { type Seconds, seconds } from "../../src-shared/units.ts";

/** Level of each part at full volume; set by measurement, so that all together stay below full scale. */
const FULL: Readonly<Record<MixPart, number>> = {
  banjo: 0.8,
  bass: 1,
  guitar: 0.5,
  chop: 0.7,
  click: 0.4,
};
/** Time of every change of level: no step is heard. */
const GLIDE: Seconds = seconds(0.03);
/** How long the whole takes to come up when playing starts. */
const RISE: Seconds = seconds(0.05);
/** Below this the ceiling changes nothing. */
const KNEE = 0.8;
/** The ceiling looks at levels up to twice full scale; beyond, it is flat. */
const REACH = 2;

/** Straight up to the knee, then bent so that nothing reaches full scale. */
const ceiling = (level: number): number => {
  const size = Math.abs(level);
  const bent = KNEE + (1 - KNEE) * Math.tanh((size - KNEE) / (1 - KNEE));
  return Math.sign(level) * Math.min(size, bent * 0.999);
};

const curve = (): Float32Array<ArrayBuffer> =>
  Float32Array.from({ length: 8193 }, (_, index) => ceiling(REACH * (index / 4096 - 1)));

/** The share of full level at a volume from 0 to 1, squared, as the ear hears steps. */
export const taper = (volume: number): number => volume ** 2;

/**
 * One gain for each part, one for all, and a ceiling. The ceiling is a waveshaper and not a
 * compressor: it adds no delay and no make-up gain, and lets nothing through in its first
 * milliseconds.
 */
export class Mixer {
  readonly parts: Readonly<Record<MixPart, Gain>>;
  readonly #all: Gain;
  readonly #ceiling: WaveShaperNode;

  constructor(context: BaseContext, output: AudioNode) {
    this.#all = new Gain({ context, gain: 0 });
    this.#ceiling = context.createWaveShaper();
    this.#ceiling.curve = curve();
    connect(this.#all, this.#ceiling);
    this.#ceiling.connect(output);
    const part = (level: number): Gain => new Gain({ context, gain: level }).connect(this.#all);
    this.parts = {
      banjo: part(FULL.banjo / REACH),
      bass: part(FULL.bass / REACH),
      guitar: part(FULL.guitar / REACH),
      chop: part(FULL.chop / REACH),
      click: part(FULL.click / REACH),
    };
  }

  /** From silence, for whatever starts later than this takes. */
  rise(now: Seconds): void {
    this.#all.gain.cancelScheduledValues(now);
    this.#all.gain.setValueAtTime(0, now);
    this.#all.gain.linearRampToValueAtTime(1, now + RISE);
  }

  set(mix: Preferences["mix"]): void {
    for (const name of ["banjo", "bass", "guitar", "chop", "click"] as const) {
      const { volume, muted } = mix[name];
      const level = muted ? 0 : FULL[name] * taper(volume);
      this.parts[name].gain.rampTo(level / REACH, GLIDE);
    }
  }

  dispose(): void {
    for (const gain of Object.values(this.parts)) {
      gain.dispose();
    }
    this.#all.dispose();
    this.#ceiling.disconnect();
  }
}
