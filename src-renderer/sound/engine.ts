import { Context, setContext } from "tone";
import { countIn } from "../../src-shared/score/countIn.ts";
import type { Run } from "../../src-shared/score/loop.ts";
import type { Score, Span } from "../../src-shared/score/score.ts";
import { ticksPerBar } from "../../src-shared/score/tempo.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import { type Bpm, type Seconds, seconds, type Tick, tick } from "../../src-shared/units.ts";
import { type AudioTime, audioTimeOf } from "./audioTime.ts";
import { Banjo } from "./banjo.ts";
import { Bass } from "./bass.ts";
import { Chop } from "./chop.ts";
import { Click } from "./click.ts";
import { Clock } from "./clock.ts";
import { Mixer } from "./mixer.ts";
import type { Playback } from "./playback.ts";
import { type Band, Scheduler } from "./scheduler.ts";

/** From Play to the first stroke: longer than the rise from silence. */
export const LEAD_IN: Seconds = seconds(0.08);
/** How often the scheduler looks ahead, in seconds; a tenth of how far. */
const EVERY = 0.02;
/** A browser that has not let the sound start after this time waits for a click. */
const PATIENCE = 1500;

type Loaded = { readonly score: Score; readonly tempo: Bpm };
type Playing = { readonly clock: Clock; readonly scheduler: Scheduler };

/** The whole band on one audio context, live or offline, which it disposes of. */
export class Engine implements Playback {
  onEnded: (() => void) | null = null;
  onHeldBack: (() => void) | null = null;
  readonly #context: Context;
  readonly #time: AudioTime;
  readonly #mixer: Mixer;
  readonly #band: Band;
  #loaded: Loaded | null = null;
  #loop: Span | null = null;
  #playing: Playing | null = null;
  readonly #tick = (): void => this.#advance();
  readonly #stateChange = (): void => this.#watch();

  constructor(context: Context, output: AudioNode, time: AudioTime) {
    this.#context = context;
    this.#time = time;
    this.#mixer = new Mixer(context, output);
    const { parts } = this.#mixer;
    this.#band = {
      banjo: new Banjo(context, parts.banjo),
      bass: new Bass(context, parts.bass),
      guitar: new Chop(context, parts.guitar),
      chop: new Chop(context, parts.chop),
      click: new Click(context, parts.click),
    };
    context.on("tick", this.#tick);
    context.on("statechange", this.#stateChange);
  }

  async wake(): Promise<void> {
    if (this.#context.state === "running") {
      return;
    }
    let waiting: ReturnType<typeof setTimeout> | undefined;
    const refused = new Promise<never>((_, reject) => {
      const refuse = (): void => reject(new Error("The browser holds the sound back."));
      waiting = setTimeout(refuse, PATIENCE);
    });
    try {
      await Promise.race([this.#context.resume(), refused]);
    } finally {
      clearTimeout(waiting);
    }
  }

  load(score: Score, tempo: Bpm): void {
    this.#loaded = { score, tempo };
    const { banjo, ...section } = this.#band;
    banjo.prepare(score.notes);
    for (const part of ["bass", "guitar", "chop"] as const) {
      section[part].prepare(score.hits.filter((hit) => hit.part === part));
    }
    section.click.prepare(countIn(score.meter, 1));
    this.#playing?.scheduler.change(score, this.#loop);
    this.setTempo(tempo);
  }

  play(from: Tick, countInBars: number): void {
    this.#silence();
    this.#mixer.rise(this.#time.now());
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
    const { score } = this.#ready();
    this.#loaded = { score, tempo };
    if (this.#playing) {
      const { clock, scheduler } = this.#playing;
      clock.changePace(scheduler.horizon, { meter: score.meter, tempo });
    }
  }

  setLoop(loop: Span | null): void {
    this.#loop = loop;
    this.#playing?.scheduler.change(this.#ready().score, loop);
  }

  setMix(mix: Preferences["mix"]): void {
    this.#mixer.set(mix);
  }

  position(): Tick {
    const playing = this.#playing;
    return playing ? playing.scheduler.songTickAt(playing.clock.heard()) : tick(0);
  }

  get countingIn(): boolean {
    return this.#playing !== null && this.#playing.clock.heard() < 0;
  }

  dispose(): void {
    this.#playing = null;
    this.#context.off("tick", this.#tick);
    this.#context.off("statechange", this.#stateChange);
    for (const instrument of Object.values(this.#band)) {
      instrument.dispose();
    }
    this.#mixer.dispose();
    this.#context.dispose();
  }

  #ready(): Loaded {
    if (!this.#loaded) {
      throw new Error("the engine is asked to play before a score is loaded");
    }
    return this.#loaded;
  }

  #start(from: Tick, countInBars: number): void {
    const { score, tempo } = this.#ready();
    const pace = { meter: score.meter, tempo };
    const run: Run = { start: tick(Math.round(from)), loop: this.#loop, end: score.length };
    const clock = new Clock(this.#time, pace);
    const lead = tick(-countInBars * ticksPerBar(score.meter));
    clock.start(seconds(this.#time.now() + LEAD_IN), lead, pace);
    this.#playing = { clock, scheduler: new Scheduler(clock, this.#band, score, run, countInBars) };
    this.#advance();
  }

  #silence(): void {
    this.#playing?.scheduler.silence(this.#time.now());
  }

  #advance(): void {
    if (!this.#playing) {
      return;
    }
    const { clock, scheduler } = this.#playing;
    scheduler.advance();
    const end = scheduler.end();
    if (end !== null && clock.heard() >= end) {
      this.#playing = null;
      this.onEnded?.();
    }
  }

  #watch(): void {
    if (this.#playing && this.#context.state !== "running") {
      this.onHeldBack?.();
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
  return new Engine(context, output, audioTimeOf(live));
};
