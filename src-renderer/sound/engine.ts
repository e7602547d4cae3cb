import { Context, setContext } from "tone";
import type { Score, Span } from "../../src-shared/score/score.ts";
import { ticksPerBar } from "../../src-shared/score/tempo.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import { type Bpm, type Seconds, seconds, type Tick, tick } from "../../src-shared/units.ts";
import { type AudioTime, audioTimeOf } from "./audioTime.ts";
import { Clock, type Pace } from "./clock.ts";
import { Ensemble } from "./ensemble.ts";
import type { Playback, Silent } from "./playback.ts";
import { Revival } from "./revival.ts";
import { type Plan, Scheduler } from "./scheduler.ts";

/** From Play to the first stroke: longer than the rise from silence. */
export const LEAD_IN: Seconds = seconds(0.08);
/** How often the scheduler looks ahead, in seconds; a small part of how far. */
const EVERY = 0.02;

type Loaded = {
  readonly score: Score;
  readonly tempo: Bpm;
  readonly silentBars: Silent;
};
type Playing = { readonly clock: Clock; readonly scheduler: Scheduler };

/** The whole band live, on a context that it closes in the end. */
export class Engine implements Playback {
  onEnded: (() => void) | null = null;
  onHeldBack: (() => void) | null = null;
  onRecovered: (() => void) | null = null;
  readonly #context: Context;
  readonly #time: AudioTime;
  readonly #ensemble: Ensemble;
  readonly #revival: Revival;
  #loaded: Loaded | null = null;
  #loop: Span | null = null;
  #countInEachRound = 0;
  #playing: Playing | null = null;
  readonly #tick = (): void => this.#advance();

  /** The context is Tone's for its ticker, a worker that goes on when the window is hidden. */
  constructor(context: Context, live: AudioContext, output: AudioNode) {
    this.#context = context;
    this.#time = audioTimeOf(live);
    this.#ensemble = new Ensemble(live, output);
    this.#revival = new Revival(live, {
      needed: () => this.#playing !== null,
      recovered: () => this.onRecovered?.(),
      lost: () => this.onHeldBack?.(),
    });
    context.on("tick", this.#tick);
  }

  /** Voices that sound now or are to. */
  get voices(): number {
    return this.#ensemble.voices;
  }

  wake(): Promise<void> {
    return this.#revival.wake();
  }

  load(score: Score, tempo: Bpm, silentBars: Silent = null): void {
    this.#loaded = { score, tempo, silentBars };
    this.#ensemble.prepare(score);
    this.#change();
    this.setTempo(tempo);
  }

  play(from: Tick, countInBars: number): void {
    this.#silence();
    this.#ensemble.mixer.rise(this.#time.now());
    this.#start(from, countInBars);
  }

  pause(): Tick {
    const at = this.position();
    this.#silence();
    this.#playing = null;
    return at;
  }

  seek(to: Tick): void {
    if (this.#playing) {
      this.#silence();
      this.#start(to, 0);
    }
  }

  setTempo(tempo: Bpm): void {
    this.#loaded = { ...this.#ready(), tempo };
    if (this.#playing) {
      const { clock, scheduler } = this.#playing;
      clock.changePace(scheduler.recall(), this.#pace());
      scheduler.advance();
    }
  }

  setLoop(loop: Span | null): void {
    this.#loop = loop;
    this.#change();
  }

  setCountInEachRound(bars: number): void {
    this.#countInEachRound = bars;
    this.#change();
  }

  setMix(mix: Preferences["mix"]): void {
    this.#ensemble.mixer.set(mix);
  }

  position(): Tick {
    const playing = this.#playing;
    return playing ? playing.scheduler.songTickAt(playing.clock.heard()) : tick(0);
  }

  get countsInTo(): Tick | null {
    const playing = this.#playing;
    return playing ? playing.scheduler.countsInTo(playing.clock.heard()) : null;
  }

  dispose(): void {
    this.#playing = null;
    this.#context.off("tick", this.#tick);
    this.#revival.dispose();
    this.#ensemble.dispose();
    this.#context.dispose();
  }

  #ready(): Loaded {
    if (!this.#loaded) {
      throw new Error("the engine is asked to play before a score is loaded");
    }
    return this.#loaded;
  }

  #pace(): Pace {
    const { score, tempo } = this.#ready();
    return { meter: score.meter, tempo };
  }

  #plan(): Plan {
    const { score, silentBars } = this.#ready();
    return { score, silentBars, loop: this.#loop, countInEachRound: this.#countInEachRound };
  }

  #change(): void {
    if (this.#playing) {
      this.#playing.scheduler.change(this.#plan());
      this.#playing.scheduler.advance();
    }
  }

  #start(from: Tick, countInBars: number): void {
    const clock = new Clock(this.#time, this.#pace());
    const lead = tick(-countInBars * ticksPerBar(this.#pace().meter));
    clock.start(seconds(this.#time.now() + LEAD_IN), lead, this.#pace());
    const start = tick(Math.round(from));
    const { band } = this.#ensemble;
    this.#playing = {
      clock,
      scheduler: new Scheduler(clock, band, this.#plan(), start, countInBars),
    };
    this.#advance();
  }

  #silence(): void {
    this.#playing?.scheduler.silence(this.#time.now());
  }

  #advance(): void {
    if (!this.#playing) {
      return;
    }
    this.#revival.look();
    const { clock, scheduler } = this.#playing;
    scheduler.advance();
    const end = scheduler.end();
    if (end !== null && clock.heard() >= end) {
      this.#playing = null;
      this.onEnded?.();
    }
  }
}

/**
 * The band on a live audio context. Tone makes a context of its own when it is loaded; ours takes
 * its place. Call it from a key press or a click, or the browser holds the sound back.
 */
export const makeEngine = (
  live: AudioContext = new AudioContext({ latencyHint: "balanced" }),
  output: AudioNode = live.destination,
): Engine => {
  const context = new Context({
    context: live,
    clockSource: "worker",
    lookAhead: 0,
    updateInterval: EVERY,
  });
  setContext(context, true);
  return new Engine(context, live, output);
};
