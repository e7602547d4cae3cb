import type { Score, Span } from "../../src-shared/score/score.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import type { Bpm, Tick } from "../../src-shared/units.ts";

/** What the player asks of the sound. Positions are ticks of the song. */
export interface Playback {
  /** Called once when the song has been heard to its end; not after `pause`. */
  onEnded: (() => void) | null;
  /** Called when the system stops the sound by itself. */
  onHeldBack: (() => void) | null;
  /** Wakes the sound up; throws where the browser or the system refuses. */
  wake(): Promise<void>;
  /** What is to be played; while playing it goes on with it at the same place. */
  load(score: Score, tempo: Bpm): void;
  /** From a position, after so many bars of clicks. Only once awake. */
  play(from: Tick, countInBars: number): void;
  /** Stops, and says where. */
  pause(): Tick;
  /** Goes on from another place at once; only while playing. */
  seek(to: Tick): void;
  setTempo(tempo: Bpm): void;
  setLoop(loop: Span | null): void;
  setMix(mix: Preferences["mix"]): void;
  /** What is heard now: in the count-in before where it starts, below 0 before the song. */
  position(): Tick;
  /** The clicks before the start are heard. */
  readonly countingIn: boolean;
  dispose(): void;
}
