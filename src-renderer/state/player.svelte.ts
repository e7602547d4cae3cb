import type { Score, Span } from "../../src-shared/score/score.ts";
import { quartersPerMinute } from "../../src-shared/score/tempo.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import { bpm, type Tick, tick } from "../../src-shared/units.ts";
import { words } from "../../src-shared/wordTable.ts";
import { LateEngine } from "../sound/lateEngine.ts";
import type { Playback, Silent } from "../sound/playback.ts";
import { silence, usualTempo } from "../sound/silence.ts";
import { Frames } from "./frames.ts";
import { HELD_BACK, PlayerShown, type PlayerState, RECOVERED } from "./playerShown.svelte.ts";
import { barsFrom, type Held, startFrom, whereaboutsAt } from "./whereabouts.ts";

/** Where the song is, and what the player does with it. The sound is made at the first play. */
export class Player extends PlayerShown {
  #score = silence;
  #tempo = usualTempo;
  #placements: readonly Held[] = [];
  #loop: Span | null = null;
  #countInBars: 0 | 1 | 2 = 0;
  /** Where it stands while nothing sounds; where it started or was sent while something does. */
  #at = tick(0);
  /** The play that waits for the sound to wake up; null where none does. */
  #start: symbol | null = null;
  readonly #late: LateEngine;
  readonly #frames: Frames = new Frames(() => this.#follow());

  constructor(makeEngine: () => Playback | Promise<Playback>) {
    super();
    this.#late = new LateEngine(makeEngine);
  }

  /** What is heard now; in the count-in as far before its end as it still lasts. */
  now(): Tick {
    return (this.#sounds() ? this.#late.made?.position() : undefined) ?? this.#at;
  }

  /** Calls back on every frame while it sounds, and at once after each move while it does not. */
  onFrame(callback: (at: Tick) => void): () => void {
    return this.#frames.subscribe(callback);
  }

  /** What is written, and what is heard of it in bars that are not silent; the place is kept. */
  load(score: Score, placements: readonly Held[], heard: Score = score, silent?: Silent): void {
    this.#score = score;
    this.#placements = placements;
    if (score.length === 0 && this.#sounds()) {
      this.stop();
    }
    const lastBar = score.bars.at(-1)?.start ?? tick(0);
    this.#at = this.#at < score.length ? this.#at : lastBar;
    this.#late.load(heard, this.#tempo, silent);
    this.show({ quartersPerMinute: quartersPerMinute(score.meter, this.#tempo) });
    this.#frames.once();
  }

  /** Pauses what sounds, takes back a play that has not begun, or plays. */
  async playPause(): Promise<void> {
    if (this.#sounds()) {
      this.#pause();
    } else if (this.#start) {
      this.#start = null;
    } else if (this.#score.length > 0) {
      await this.#wakeAndPlay();
    }
  }

  /** Back to the start: of the loop, where there is one. */
  stop(): void {
    this.#start = null;
    this.#late.made?.pause();
    this.#rest("stopped", this.#loop?.start ?? tick(0));
  }

  /** To a tick within the song; a count-in that is under way begins again before it. */
  seek(to: Tick): void {
    this.#at = tick(Math.max(0, Math.min(Math.round(to), this.#score.length - 1)));
    if (this.is.state === "countingIn") {
      this.#begin();
    } else if (this.is.state === "playing") {
      this.#late.made?.seek(this.#at);
    }
    this.#frames.once();
  }

  /** Bars on or back; the first step back goes to this bar's start once its first beat is over. */
  stepBar(by: number): void {
    this.seek(barsFrom(this.#score, this.#place(), by));
  }

  /** In beats of the meter, at once. */
  setTempo(beatsPerMinute: number): void {
    this.#tempo = bpm(beatsPerMinute);
    this.#late.setTempo(this.#tempo);
    this.show({ quartersPerMinute: quartersPerMinute(this.#score.meter, this.#tempo) });
  }

  /** Round and round a span; from outside it, to its start. */
  setLoop(span: Span | null): void {
    this.#loop = span;
    this.#late.setLoop(span);
    const at = this.#place();
    if (span && (at < span.start || at >= span.end)) {
      this.seek(span.start);
    }
  }

  setCountIn(bars: 0 | 1 | 2): void {
    this.#countInBars = bars;
  }

  /** Bars of clicks before each further round of the loop; 0 for none. */
  setCountInEachRound(bars: number): void {
    this.#late.setCountInEachRound(bars);
  }

  setMix(mix: Preferences["mix"]): void {
    this.#late.setMix(mix);
  }

  /**
   * The sound, awake, for someone else to play on; the song rests meanwhile. Afterwards all that was
   * set here has to be set again.
   */
  lend(): Promise<Playback> {
    this.#start = null;
    if (this.#sounds()) {
      this.#pause();
    }
    return this.#late.ready();
  }

  dispose(): void {
    this.stop();
    this.#late.dispose();
  }

  #sounds(): boolean {
    return this.is.state === "playing" || this.is.state === "countingIn";
  }

  /** Where in the song it stands; in the count-in, where that leads. */
  #place(): Tick {
    return this.#countsInTo() ?? this.now();
  }

  #countsInTo(): Tick | null {
    return this.is.state === "countingIn" ? (this.#late.made?.countsInTo ?? this.#at) : null;
  }

  async #wakeAndPlay(): Promise<void> {
    const start = Symbol("start");
    this.#start = start;
    this.show({ problem: null });
    try {
      const engine = await this.#late.ready();
      if (this.#start === start) {
        const rest = (): void => this.#rest("stopped", this.#loop?.start ?? tick(0));
        engine.onEnded = () => this.heardOut(rest);
        engine.onHeldBack = () => this.#pause(HELD_BACK);
        engine.onRecovered = () => this.show({ problem: RECOVERED });
        this.#begin();
        this.#frames.start();
      }
    } catch (thrown) {
      const reason = thrown instanceof Error ? thrown.message : String(thrown);
      this.show({ problem: words.sound.nonePlay(reason) });
    }
    this.#start = this.#start === start ? null : this.#start;
  }

  #begin(): void {
    this.#at = startFrom(this.#score, this.#loop, this.#at, this.#countInBars);
    this.#late.made?.play(this.#at, this.#countInBars);
    this.show({ state: this.#countInBars > 0 ? "countingIn" : "playing" });
  }

  #pause(problem: string | null = null): void {
    const at = this.#place();
    this.#late.made?.pause();
    this.show({ problem });
    this.#rest("paused", at);
  }

  #rest(state: PlayerState, at: Tick): void {
    this.show({ state });
    this.#at = at;
    this.#frames.stop();
    this.#frames.once();
  }

  #follow(): Tick {
    const at = this.now();
    if (this.#sounds()) {
      const countsIn = (this.#late.made?.countsInTo ?? null) !== null;
      this.show({ state: countsIn ? "countingIn" : "playing" });
    }
    this.show(whereaboutsAt(this.#score, this.#placements, at, this.#countsInTo()));
    return at;
  }
}
