import { type Seconds, seconds, type Tick, tick } from "../../src-shared/units.ts";
import type { Clock } from "./clock.ts";
import type { Voice } from "./instrument.ts";
import type { Moment } from "./moments.ts";

/** Something that is to happen at an unrolled position to a voice that was struck at another. */
type Due = {
  readonly struck: Tick;
  readonly at: Tick;
  readonly moment: Moment;
  readonly voice: Voice;
};

const tell = (voice: Voice, moment: Moment, time: Seconds): void => {
  if (moment.kind === "bend") {
    voice.bend(moment.semitones, time);
  } else {
    voice.stop(time);
  }
};

/** What is to happen to notes that were struck; told to them only when it is near. */
export class Pending {
  #waiting: Due[] = [];
  /** Told already, and not over yet: it can still be taken back. */
  #told: readonly Due[] = [];

  /** How much is remembered. */
  get size(): number {
    return this.#waiting.length + this.#told.length;
  }

  /** Adding `offset` to a moment's tick gives its position. */
  add(struck: Tick, voice: Voice, moments: readonly Moment[], offset: Tick): void {
    for (const moment of moments) {
      this.#waiting.push({ struck, at: tick(moment.tick + offset), moment, voice });
    }
  }

  /** Tells what falls due before a position; what is late, at once. Forgets what is over. */
  meet(to: Tick, clock: Clock): void {
    const now = clock.now();
    const over = clock.tickAt(now);
    const near = this.#waiting.filter(({ at }) => at < to);
    if (near.length > 0) {
      this.#waiting = this.#waiting.filter(({ at }) => at >= to);
    }
    for (const { at, moment, voice } of near) {
      tell(voice, moment, seconds(Math.max(clock.timeOf(at), now)));
    }
    this.#told = [...this.#told.filter(({ at }) => at >= over), ...near];
  }

  /** From `cut` on nothing has been told any more; what was struck from there on is forgotten. */
  recall(cut: Tick): void {
    const back = this.#told.filter(({ at }) => at >= cut);
    this.#told = this.#told.filter(({ at }) => at < cut);
    this.#waiting = [...back, ...this.#waiting].filter(({ struck }) => struck < cut);
  }

  clear(): void {
    this.#waiting = [];
    this.#told = [];
  }
}
