import { type Seconds, seconds } from "../../src-shared/units.ts";
import type { Voice } from "./instrument.ts";

/** Time constant of a damped string: 35 dB down in 10 ms. */
const DAMPING = 0.0025;
/** By then a damped voice is 70 dB down and is let go. */
const DAMPED = 0.02;
/** How long a finger takes over a fret wire. */
const BEND = 0.005;
/** A soft attack starts at this level and comes up with this time constant. */
const SOFT = { from: 0.45, timeConstant: 0.008 };
/** Later than any recording ends, however far it is bent down. */
const ENDLESS = 60;

/** How one sound is started. */
export type Attack = {
  /** 1 is the level of the buffer. */
  readonly level: number;
  readonly soft: boolean;
};

type Bend = { readonly time: Seconds; readonly rate: number };

class Sounding implements Voice {
  readonly start: Seconds;
  readonly #source: AudioBufferSourceNode;
  readonly #gain: GainNode;
  #stopsAt = Number.POSITIVE_INFINITY;
  #bends: readonly Bend[] = [];

  constructor(
    context: BaseAudioContext,
    output: AudioNode,
    buffer: AudioBuffer,
    start: Seconds,
    attack: Attack,
  ) {
    this.start = start;
    this.#source = context.createBufferSource();
    this.#source.buffer = buffer;
    this.#gain = context.createGain();
    this.#gain.gain.setValueAtTime(attack.level * (attack.soft ? SOFT.from : 1), start);
    if (attack.soft) {
      this.#gain.gain.setTargetAtTime(attack.level, start, SOFT.timeConstant);
    }
    this.#source.connect(this.#gain).connect(output);
    this.#source.start(start);
  }

  whenOver(then: () => void): void {
    this.#source.onended = then;
  }

  bend(semitones: number, time: Seconds): void {
    const { playbackRate } = this.#source;
    const last = this.#bends.at(-1) ?? { time: this.start, rate: 1 };
    playbackRate.setValueAtTime(last.rate, Math.max(time - BEND, last.time));
    const rate = 2 ** (semitones / 12);
    playbackRate.linearRampToValueAtTime(rate, time);
    this.#bends = [...this.#bends, { time, rate }];
  }

  stop(time: Seconds): void {
    if (time >= this.#stopsAt) {
      return;
    }
    this.#stopsAt = time;
    if (time <= this.start) {
      this.#source.stop(this.start);
      return;
    }
    this.#gain.gain.cancelScheduledValues(time);
    this.#gain.gain.setTargetAtTime(0, time, DAMPING);
    this.#source.stop(time + DAMPED);
  }

  recall(from: Seconds): void {
    if (this.#bends.some(({ time }) => time >= from)) {
      this.#bends = this.#bends.filter(({ time }) => time < from);
      this.#source.playbackRate.cancelScheduledValues(from);
    }
    if (this.#stopsAt >= from && this.#stopsAt < Number.POSITIVE_INFINITY) {
      this.#stopsAt = Number.POSITIVE_INFINITY;
      this.#gain.gain.cancelScheduledValues(from);
      // The last stop that is asked for is the one that counts.
      this.#source.stop(this.start + ENDLESS);
    }
  }

  cancel(): void {
    this.#stopsAt = this.start;
    this.#source.stop();
  }

  release(): void {
    this.#source.onended = null;
    this.#source.disconnect();
    this.#gain.disconnect();
  }
}

/** Plays recordings, each as a voice that lets go of its nodes when it is over. */
export class Voices {
  readonly #context: BaseAudioContext;
  readonly #output: AudioNode;
  readonly #sounding = new Set<Sounding>();

  constructor(context: BaseAudioContext, output: AudioNode) {
    this.#context = context;
    this.#output = output;
  }

  /** Voices that sound now or are to. */
  get count(): number {
    return this.#sounding.size;
  }

  play(buffer: AudioBuffer, time: Seconds, attack: Attack): Voice {
    const voice = new Sounding(this.#context, this.#output, buffer, time, attack);
    this.#sounding.add(voice);
    voice.whenOver(() => this.#letGo(voice));
    return voice;
  }

  silence(time: Seconds): void {
    for (const voice of this.#sounding) {
      voice.stop(time);
    }
  }

  dispose(): void {
    this.silence(seconds(this.#context.currentTime));
    for (const voice of this.#sounding) {
      this.#letGo(voice);
    }
  }

  #letGo(voice: Sounding): void {
    voice.release();
    this.#sounding.delete(voice);
  }
}
