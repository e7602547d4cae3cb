import type { Playback } from "../../../../src-renderer/sound/playback.ts";
import type { Score } from "../../../../src-shared/score/score.ts";
import { type Tick, tick } from "../../../../src-shared/units.ts";

/** An engine without sound; a test turns it on by hand. */
export class HandEngine implements Playback {
  onEnded: (() => void) | null = null;
  onHeldBack: (() => void) | null = null;
  onRecovered: (() => void) | null = null;
  countsInTo: Tick | null = null;
  at: Tick = tick(0);
  tempo = 0;
  score: Score | null = null;
  sounding = false;
  /** What it was told that makes no difference to where it is. */
  readonly told: string[] = [];

  wake(): Promise<void> {
    return Promise.resolve();
  }
  load(score: Score, tempo: number): void {
    this.score = score;
    this.tempo = tempo;
  }
  play(from: Tick): void {
    this.at = from;
    this.sounding = true;
  }
  pause(): Tick {
    this.sounding = false;
    return this.at;
  }
  seek(to: Tick): void {
    this.at = to;
  }
  setTempo(tempo: number): void {
    this.tempo = tempo;
  }
  setLoop(): void {
    this.told.push("loop");
  }
  setCountInEachRound(): void {
    this.told.push("count-in");
  }
  setMix(): void {
    this.told.push("mix");
  }
  position(): Tick {
    return this.at;
  }
  dispose(): void {
    this.told.push("dispose");
  }
}
