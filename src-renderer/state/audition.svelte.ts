import type { Score } from "../../src-shared/score/score.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import { type Bpm, type Tick, tick } from "../../src-shared/units.ts";
import { words } from "../../src-shared/wordTable.ts";
import type { Playback } from "../sound/playback.ts";
import { Frames } from "./frames.ts";

const HELD_BACK = words.sound.stoppedHear;

/** Plays a short score round and round on the sound that the song's player lends it. */
export class Audition {
  /** What is heard now, in ticks of the score; null while nothing sounds. */
  at: Tick | null = $state.raw(null);
  /** Why there is no sound, in words. */
  problem: string | null = $state.raw(null);
  #engine: Playback | null = null;
  #start: symbol | null = null;
  readonly #lend: () => Promise<Playback>;
  readonly #frames: Frames = new Frames(() => this.#follow());

  constructor(lend: () => Promise<Playback>) {
    this.#lend = lend;
  }

  get sounds(): boolean {
    return this.at !== null;
  }

  async start(score: Score, tempo: Bpm, mix: Preferences["mix"]): Promise<void> {
    const start = Symbol("start");
    this.#start = start;
    this.problem = null;
    try {
      const engine = await this.#lend();
      if (this.#start !== start) return;
      this.#engine = engine;
      engine.onEnded = null;
      engine.onHeldBack = () => {
        this.stop();
        this.problem = HELD_BACK;
      };
      engine.setMix(mix);
      this.#load(engine, score, tempo);
      engine.play(tick(0), 0);
      this.at = tick(0);
      this.#frames.start();
    } catch (thrown) {
      const reason = thrown instanceof Error ? thrown.message : String(thrown);
      this.problem = words.sound.noneHear(reason);
    }
  }

  /** Goes on with another score at the same place; only while it sounds. */
  change(score: Score, tempo: Bpm): void {
    if (!this.#engine) return;
    this.#load(this.#engine, score, tempo);
    if (this.#engine.position() >= score.length) this.#engine.seek(tick(0));
  }

  stop(): void {
    this.#start = null;
    this.#frames.stop();
    this.#engine?.pause();
    this.#engine = null;
    this.at = null;
  }

  #load(engine: Playback, score: Score, tempo: Bpm): void {
    engine.load(score, tempo);
    engine.setLoop({ start: tick(0), end: score.length });
  }

  #follow(): Tick {
    const at = this.#engine?.position() ?? tick(0);
    if (this.#engine) this.at = at;
    return at;
  }
}
