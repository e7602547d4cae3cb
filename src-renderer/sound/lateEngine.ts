import type { Score, Span } from "../../src-shared/score/score.ts";
import { firstPreferences, type Preferences } from "../../src-shared/settings.ts";
import type { Bpm } from "../../src-shared/units.ts";
import { words } from "../../src-shared/wordTable.ts";
import type { Playback, Silent } from "./playback.ts";
import { silence, usualTempo } from "./silence.ts";

type Settings = {
  readonly loaded: {
    readonly score: Score;
    readonly tempo: Bpm;
    readonly silentBars: Silent;
  };
  readonly loop: Span | null;
  readonly countInEachRound: number;
  readonly mix: Preferences["mix"];
};

/** An engine that is made when it is first needed, and then told all that was set before. */
export class LateEngine {
  readonly #make: () => Playback | Promise<Playback>;
  #settings: Settings = {
    loaded: { score: silence, tempo: usualTempo, silentBars: null },
    loop: null,
    countInEachRound: 0,
    mix: firstPreferences.mix,
  };
  #making: Promise<Playback> | null = null;
  #made: Playback | null = null;
  #closed = false;

  constructor(make: () => Playback | Promise<Playback>) {
    this.#make = make;
  }

  /** null before it is made and after it is disposed of. */
  get made(): Playback | null {
    return this.#made;
  }

  load(score: Score, tempo: Bpm, silentBars: Silent = null): void {
    this.#settings = { ...this.#settings, loaded: { score, tempo, silentBars } };
    this.#made?.load(score, tempo, silentBars);
  }

  setTempo(tempo: Bpm): void {
    this.#settings = { ...this.#settings, loaded: { ...this.#settings.loaded, tempo } };
    this.#made?.setTempo(tempo);
  }

  setLoop(loop: Span | null): void {
    this.#settings = { ...this.#settings, loop };
    this.#made?.setLoop(loop);
  }

  setCountInEachRound(bars: number): void {
    this.#settings = { ...this.#settings, countInEachRound: bars };
    this.#made?.setCountInEachRound(bars);
  }

  setMix(mix: Preferences["mix"]): void {
    this.#settings = { ...this.#settings, mix };
    this.#made?.setMix(mix);
  }

  /** The engine, awake. Throws where it cannot be made or woken; then it may be tried again. */
  async ready(): Promise<Playback> {
    this.#making ??= this.#makeNow();
    const making = this.#making;
    try {
      const engine = await making;
      await engine.wake();
      return engine;
    } catch (thrown) {
      if (this.#made === null && this.#making === making) {
        this.#making = null;
      }
      throw thrown;
    }
  }

  /** For good: an engine that is still being made is let go as soon as it is there. */
  dispose(): void {
    this.#closed = true;
    this.#making = null;
    this.#made?.dispose();
    this.#made = null;
  }

  async #makeNow(): Promise<Playback> {
    const engine = await this.#make();
    if (this.#closed) {
      engine.dispose();
      throw new Error(words.sound.closed);
    }
    const { loaded, loop, countInEachRound, mix } = this.#settings;
    engine.load(loaded.score, loaded.tempo, loaded.silentBars);
    engine.setLoop(loop);
    engine.setCountInEachRound(countInEachRound);
    engine.setMix(mix);
    this.#made = engine;
    return engine;
  }
}
