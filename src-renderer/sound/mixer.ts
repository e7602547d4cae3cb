import type { MixPart, Preferences } from "../../src-shared/settings.ts";
import type { Seconds } from "../../src-shared/units.ts";

/** Whoever has a place in the mix: the count-in is heard whoever plays alone. */
type Place = MixPart | "countIn";

const mixParts: readonly MixPart[] = ["banjo", "bass", "guitar", "chop", "click"];

/**
 * Level of each part at full volume, set by measurement on arranged songs: in the usual mix the bass
 * is about 1 dB (RMS) under the banjo, the guitar 7 and the short chop 10, and all together stay
 * below the knee, so that the ceiling changes nothing there.
 */
const FULL: Readonly<Record<MixPart, number>> = {
  banjo: 1.05,
  bass: 2.1,
  guitar: 2.1,
  chop: 1.4,
  click: 0.85,
};
/** Time constant of every change of level: no step is heard, and 30 ms later it is done. */
const GLIDE = 0.006;
/** How long the whole takes to come up when playing starts. */
const RISE = 0.05;
/** Below this the ceiling changes nothing. */
const KNEE = 0.8;
/** The ceiling looks at levels up to this many times full scale; beyond, it is flat. */
const REACH = 4;

/** Straight up to the knee, then bent so that nothing reaches full scale. */
const ceiling = (level: number): number => {
  const size = Math.abs(level);
  const bent = KNEE + (1 - KNEE) * Math.tanh((size - KNEE) / (1 - KNEE));
  return Math.sign(level) * Math.min(size, bent * 0.999);
};

const curve = (): Float32Array<ArrayBuffer> =>
  Float32Array.from({ length: 16_385 }, (_, index) => ceiling(REACH * (index / 8192 - 1)));

/** The share of full level at a volume from 0 to 1, squared, as the ear hears steps. */
export const taper = (volume: number): number => volume ** 2;

class Strip {
  readonly gain: GainNode;
  readonly #pan: StereoPannerNode;
  readonly #now: () => number;

  constructor(context: BaseAudioContext, output: AudioNode) {
    this.gain = context.createGain();
    this.gain.gain.value = 0;
    this.#pan = context.createStereoPanner();
    this.gain.connect(this.#pan).connect(output);
    this.#now = () => context.currentTime;
  }

  /** At once where nothing sounds yet. */
  set(level: number, pan: number, glide: boolean): void {
    const now = this.#now();
    for (const [param, value] of [
      [this.gain.gain, level],
      [this.#pan.pan, pan],
    ] as const) {
      param.cancelScheduledValues(now);
      if (glide) {
        param.setTargetAtTime(value, now, GLIDE);
      } else {
        param.setValueAtTime(value, now);
      }
    }
  }

  disconnect(): void {
    this.gain.disconnect();
    this.#pan.disconnect();
  }
}

/**
 * One strip (volume and place from left to right) for each part, one gain for all, and a ceiling.
 * The ceiling is a waveshaper and not a compressor: it adds no delay (sound and screen would part by
 * it), no make-up gain, and lets nothing through in its first milliseconds, where a plucked string
 * is loudest.
 */
export class Mixer {
  readonly #strips: Readonly<Record<Place, Strip>>;
  readonly #all: GainNode;
  readonly #ceiling: WaveShaperNode;
  #set = false;

  constructor(context: BaseAudioContext, output: AudioNode) {
    this.#all = context.createGain();
    this.#all.gain.value = 0;
    this.#ceiling = context.createWaveShaper();
    this.#ceiling.curve = curve();
    this.#all.connect(this.#ceiling).connect(output);
    const strip = (): Strip => new Strip(context, this.#all);
    this.#strips = {
      banjo: strip(),
      bass: strip(),
      guitar: strip(),
      chop: strip(),
      click: strip(),
      countIn: strip(),
    };
  }

  /** Where a part's sound goes in. */
  input(place: Place): AudioNode {
    return this.#strips[place].gain;
  }

  /** From silence, for whatever starts later than this takes. */
  rise(now: Seconds): void {
    this.#all.gain.cancelScheduledValues(now);
    this.#all.gain.setValueAtTime(0, now);
    this.#all.gain.linearRampToValueAtTime(1, now + RISE);
  }

  set(mix: Preferences["mix"]): void {
    const alone = mixParts.some((part) => mix[part].solo);
    const level = (part: MixPart): number =>
      mix[part].muted ? 0 : (FULL[part] * taper(mix[part].volume)) / REACH;
    for (const part of mixParts) {
      const heard = !alone || mix[part].solo;
      this.#strips[part].set(heard ? level(part) : 0, mix[part].pan, this.#set);
    }
    this.#strips.countIn.set(level("click"), mix.click.pan, this.#set);
    this.#set = true;
  }

  dispose(): void {
    for (const strip of Object.values(this.#strips)) {
      strip.disconnect();
    }
    this.#all.disconnect();
    this.#ceiling.disconnect();
  }
}
