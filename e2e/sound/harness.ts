import { audioTimeOf } from "../../src-renderer/sound/audioTime.ts";
import { banjoStroke } from "../../src-renderer/sound/banjo.ts";
import { bassStroke } from "../../src-renderer/sound/bass.ts";
import { chopStroke } from "../../src-renderer/sound/chop.ts";
import { clickStroke } from "../../src-renderer/sound/click.ts";
import { type Engine, makeEngine } from "../../src-renderer/sound/engine.ts";
import { guitarStroke } from "../../src-renderer/sound/guitar.ts";
import type { Onlooker } from "../../src-renderer/sound/onlooker.ts";
import { type Rendering, renderOffline } from "../../src-renderer/sound/renderOffline.ts";
import { renderWav } from "../../src-renderer/sound/renderWav.ts";
import { Sounder } from "../../src-renderer/sound/sounder.ts";
import type { Bits } from "../../src-renderer/sound/writeWav.ts";
import type { Hit, Part, Score } from "../../src-shared/score/score.ts";
import type { MixPart, Preferences } from "../../src-shared/settings.ts";
import { bpm, type Seconds, seconds, tick } from "../../src-shared/units.ts";
import { follow } from "./followPlayer.svelte.ts";
import { handMadeScore, rhythm, roll } from "./handMadeScore.ts";
import { Recorder } from "./recorder.ts";
import { soundBench } from "./soundBench.ts";

/** Sound on its way to the spec: 32-bit floats, little-endian, in base 64. */
export type Sent = { readonly start: number; readonly base64: string };
/** Where the engine said it was, between two audio times that were heard. */
export type Sighting = { readonly since: number; readonly at: number; readonly till: number };

const base64Of = (bytes: Uint8Array): string => {
  let text = "";
  for (let from = 0; from < bytes.length; from += 0x8000) {
    text += String.fromCharCode(...bytes.subarray(from, from + 0x8000));
  }
  return btoa(text);
};

const send = (start: number, samples: Float32Array): Sent => ({
  start,
  base64: base64Of(new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength)),
});

const until = (met: () => boolean): Promise<void> =>
  new Promise((resolve) => {
    const look = (): void => {
      if (met()) {
        resolve();
      } else {
        setTimeout(look, 4);
      }
    };
    look();
  });

type Struck = {
  strike(time: Seconds): void;
  silence(time: Seconds): void;
  dispose(): void;
  voices(): number;
};

const struck = <Stroke>(sounder: Sounder<Stroke>, stroke: Stroke | undefined): Struck => {
  if (stroke === undefined) {
    throw new Error("there is nothing to strike");
  }
  return {
    strike: (time) => {
      sounder.strike(stroke, time);
    },
    silence: (time) => sounder.silence(time),
    dispose: () => sounder.dispose(),
    voices: () => sounder.voices,
  };
};

const [note] = handMadeScore(1, roll(1, 7)).notes;
const hitOf = (part: Part): Hit | undefined => rhythm(1).find((hit) => hit.part === part);

const everyInstrument: Readonly<
  Record<MixPart, (context: OfflineAudioContext, output: AudioNode) => Struck>
> = {
  banjo: (context, output) => struck(new Sounder(context, output, banjoStroke), note),
  bass: (context, output) => struck(new Sounder(context, output, bassStroke), hitOf("bass")),
  guitar: (context, output) => struck(new Sounder(context, output, guitarStroke), hitOf("guitar")),
  chop: (context, output) => struck(new Sounder(context, output, chopStroke), hitOf("chop")),
  click: (context, output) => struck(new Sounder(context, output, clickStroke), hitOf("click")),
};

/** What an instrument did that was struck at 0.25 s and for 0.7 s, and silenced for 0.28 s. */
export type Alone = {
  readonly sound: Sent;
  /** Voices held while it sounded, when all was over, and after it was disposed of in mid-note. */
  readonly voices: readonly [during: number, over: number, disposed: number];
};

const instrumentAlone = async (name: MixPart, sampleRate: number): Promise<Alone> => {
  const offline = new OfflineAudioContext(1, sampleRate, sampleRate);
  const instrument = everyInstrument[name](offline, offline.destination);
  instrument.strike(seconds(0.25));
  instrument.strike(seconds(0.7));
  const during = instrument.voices();
  instrument.silence(seconds(0.28));
  const buffer = await offline.startRendering();
  await until(() => instrument.voices() === 0);
  const over = instrument.voices();
  instrument.strike(seconds(0.25));
  instrument.dispose();
  const disposed = instrument.voices();
  return { sound: send(0, buffer.getChannelData(0)), voices: [during, over, disposed] };
};

class Live {
  readonly #native = new AudioContext({ latencyHint: "interactive" });
  readonly #time = audioTimeOf(this.#native);
  #engine: Engine | null = null;
  #recorder: Recorder | null = null;
  readonly #sightings: Sighting[] = [];
  ended = 0;
  recovered = 0;

  get sampleRate(): number {
    return this.#native.sampleRate;
  }

  get engine(): Engine {
    if (!this.#engine) {
      throw new Error("nothing plays yet");
    }
    return this.#engine;
  }

  async open(score: Score, tempo: number, mix: Preferences["mix"]): Promise<void> {
    const output = this.#native.createGain();
    output.connect(this.#native.destination);
    this.#recorder = await Recorder.on(this.#native);
    output.connect(this.#recorder.node);
    this.#engine = makeEngine(this.#native, output);
    this.#engine.onEnded = (): void => {
      this.ended += 1;
    };
    this.#engine.onRecovered = (): void => {
      this.recovered += 1;
    };
    this.#engine.setMix(mix);
    this.#engine.load(score, bpm(tempo));
    await this.#engine.wake();
  }

  /** Waits until a position of the song is heard, looking as often as it can. */
  async reach(at: number): Promise<void> {
    await until(() => this.#look() >= at);
  }

  /** Waits until so much audio time has gone by. */
  async pass(time: number): Promise<void> {
    const from = this.#native.currentTime;
    await until(
      () => this.#look() > Number.NEGATIVE_INFINITY && this.#native.currentTime >= from + time,
    );
  }

  /** Waits until the song has been heard to its end. */
  async over(): Promise<void> {
    // Each page plays once, and on a busy machine the end may have come before it is asked for.
    await until(() => this.#look() >= 0 && this.ended > 0);
  }

  /** Holds the main thread for 100 ms, lets it go for a time, and so on until a position is heard. */
  async labour(at: number, free = 50): Promise<void> {
    while (this.engine.position() < at && this.ended === 0) {
      const from = performance.now();
      await until(() => performance.now() > from + free);
      const held = performance.now();
      while (performance.now() < held + 100) {
        this.#native.currentTime;
      }
    }
  }

  /** Stops the context as the system may do, behind the engine's back. */
  async interrupt(): Promise<void> {
    await this.#native.suspend();
  }

  take(): { readonly sound: Sent; readonly sightings: readonly Sighting[] } {
    const { start, samples } = this.#recorder?.take() ?? { start: 0, samples: new Float32Array() };
    return { sound: send(start, samples), sightings: this.#sightings };
  }

  now(): number {
    return this.#native.currentTime;
  }

  #look(): number {
    const since = this.#time.heard();
    const at = this.engine.position();
    this.#sightings.push({ since, at, till: this.#time.heard() });
    return at;
  }
}

/** A WAV file, and the shares that were told on the way. */
const wav = async (
  rendering: Rendering,
  bits: Bits,
): Promise<{ readonly base64: string; readonly shares: readonly number[] }> => {
  const shares: number[] = [];
  const progress = (share: number): void => {
    shares.push(share);
  };
  const bytes = await renderWav(rendering, bits, { progress, signal: null });
  return { base64: base64Of(new Uint8Array(bytes)), shares };
};

/** Cancels a rendering once it has come a little way; what it threw, and how far it was. */
const cancelled = async (
  rendering: Rendering,
): Promise<{ readonly reason: string; readonly share: number }> => {
  const stop = new AbortController();
  let last = 0;
  const progress = (share: number): void => {
    last = share;
    if (share > 0.05) {
      stop.abort(new Error("enough"));
    }
  };
  try {
    await renderWav(rendering, 16, { progress, signal: stop.signal });
    return { reason: "it went on", share: last };
  } catch (thrown) {
    return { reason: thrown instanceof Error ? thrown.message : String(thrown), share: last };
  }
};

/** The most voices that there are at one time while a score is rendered second by second. */
const mostVoices = async (score: Score, mix: Preferences["mix"]): Promise<number> => {
  const rate = 48_000;
  const tempo = bpm(100);
  const range = { start: tick(0), end: score.length };
  let most = 0;
  const create = OfflineAudioContext.prototype.createBufferSource;
  const sounding = new Set<AudioBufferSourceNode>();
  OfflineAudioContext.prototype.createBufferSource = function made(): AudioBufferSourceNode {
    const source = create.call(this);
    sounding.add(source);
    source.addEventListener("ended", () => sounding.delete(source));
    return source;
  };
  const progress = (): void => {
    most = Math.max(most, sounding.size);
  };
  try {
    const rendering = { score, tempo, mix, range, countInBars: 0, sampleRate: rate };
    await renderOffline(rendering, { progress, signal: null });
  } finally {
    OfflineAudioContext.prototype.createBufferSource = create;
  }
  return most;
};

const quietly: Onlooker = { progress: () => undefined, signal: null };

const harness = {
  bench: soundBench,
  /** Both sides, as they leave the mixer. */
  render: async (rendering: Rendering): Promise<readonly [left: Sent, right: Sent]> => {
    const sound = await renderOffline(rendering, quietly);
    return [send(0, sound.getChannelData(0)), send(0, sound.getChannelData(1))];
  },
  wav,
  cancelled,
  mostVoices,
  instrumentAlone,
  follow,
  live: new Live(),
};

declare global {
  interface Window {
    harness: typeof harness;
  }
}

window.harness = harness;
