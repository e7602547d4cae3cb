import { type BaseContext, connect, type Gain } from "tone";
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

/** How one sound is started. */
export type Attack = {
  /** 1 is the level of the buffer. */
  readonly level: number;
  readonly soft: boolean;
};

class Sounding implements Voice {
  readonly #source: AudioBufferSourceNode;
  readonly #gain: GainNode;
  readonly #start: Seconds;
  #stopsAt = Number.POSITIVE_INFINITY;
  #bentAt: number;
  #rate = 1;

  constructor(
    context: BaseContext,
    output: Gain,
    buffer: AudioBuffer,
    start: Seconds,
    attack: Attack,
  ) {
    this.#start = start;
    this.#bentAt = start;
    this.#source = context.createBufferSource();
    this.#source.buffer = buffer;
    this.#gain = context.createGain();
    this.#gain.gain.setValueAtTime(attack.level * (attack.soft ? SOFT.from : 1), start);
    if (attack.soft) {
      this.#gain.gain.setTargetAtTime(attack.level, start, SOFT.timeConstant);
    }
    this.#source.connect(this.#gain);
    connect(this.#gain, output);
    this.#source.start(start);
  }

  whenOver(then: () => void): void {
    this.#source.onended = then;
  }

  bend(semitones: number, time: Seconds): void {
    const { playbackRate } = this.#source;
    playbackRate.setValueAtTime(this.#rate, Math.max(time - BEND, this.#bentAt));
    this.#rate = 2 ** (semitones / 12);
    playbackRate.linearRampToValueAtTime(this.#rate, time);
    this.#bentAt = time;
  }

  stop(time: Seconds): void {
    if (time >= this.#stopsAt) {
      return;
    }
    this.#stopsAt = time;
    if (time <= this.#start) {
      this.#source.stop(this.#start);
      return;
    }
    this.#gain.gain.cancelScheduledValues(time);
    this.#gain.gain.setTargetAtTime(0, time, DAMPING);
    this.#source.stop(time + DAMPED);
  }

  release(): void {
    this.#source.onended = null;
    this.#source.disconnect();
    this.#gain.disconnect();
  }
}

/** Plays recordings, each as a voice that lets go of its nodes when it is over. */
export class Voices {
  readonly #context: BaseContext;
  readonly #output: Gain;
  readonly #sounding = new Set<Sounding>();

  constructor(context: BaseContext, output: Gain) {
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
