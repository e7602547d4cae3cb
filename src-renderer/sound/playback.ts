import type { Practice } from "../../src-shared/score/band.ts";
import type { Score, Span } from "../../src-shared/score/score.ts";
import type { Preferences } from "../../src-shared/settings.ts";
import type { Bpm, Tick } from "../../src-shared/units.ts";

/** Bars in which everyone drops out, counted on from round to round. */
export type Silent = Practice["silentBars"];

/** What the player asks of the sound. Positions are ticks of the song. */
export interface Playback {
  /** Called once when the song has been heard to its end; not after `pause`. */
  onEnded: (() => void) | null;
  /** Called when the system has stopped the sound by itself, and waking it up did not help. */
  onHeldBack: (() => void) | null;
  /** Called when the system had stopped the sound by itself, and it goes on now. */
  onRecovered: (() => void) | null;
  /** Wakes the sound up; throws where the browser or the system refuses. */
  wake(): Promise<void>;
  /** What is to be played; while playing it goes on with it at the same place. */
  load(score: Score, tempo: Bpm, silentBars?: Silent): void;
  /** From a position, after so many bars of clicks. Only once awake. */
  play(from: Tick, countInBars: number): void;
  /** Stops, and says where. */
  pause(): Tick;
  /** Goes on from another place at once; only while playing. */
  seek(to: Tick): void;
  /** In beats of the meter's unit; while playing in effect within an eighth. */
  setTempo(tempo: Bpm): void;
  setLoop(loop: Span | null): void;
  /** Bars of clicks before each further round of the loop; 0 for none. */
  setCountInEachRound(bars: number): void;
  setMix(mix: Preferences["mix"]): void;
  /** What is heard now: in a count-in before where that leads, below 0 before the song. */
  position(): Tick;
  /** Where the count-in leads that is heard now; null outside a count-in. */
  readonly countsInTo: Tick | null;
  dispose(): void;
}
