import type { Seconds } from "../../src-shared/units.ts";
import type { Voice } from "./instrument.ts";

/** Strings, or whole hands, that sound one stroke at a time: each stroke ends the one before. */
export class Lines {
  readonly #now: () => Seconds;
  readonly #lines = new Map<number, readonly Voice[]>();

  constructor(now: () => Seconds) {
    this.#now = now;
  }

  strike(line: number, voice: Voice): void {
    const before = this.#lines.get(line) ?? [];
    before.at(-1)?.stop(voice.start);
    const now = this.#now();
    const sounding = Math.max(
      0,
      before.findLastIndex(({ start }) => start <= now),
    );
    this.#lines.set(line, [...before.slice(sounding), voice]);
  }

  /** What was ended by a stroke that is taken back rings on. */
  recall(from: Seconds): void {
    for (const [line, voices] of this.#lines) {
      for (const voice of voices) {
        if (voice.start >= from) {
          voice.cancel();
        } else {
          voice.recall(from);
        }
      }
      this.#lines.set(
        line,
        voices.filter(({ start }) => start < from),
      );
    }
  }

  clear(): void {
    this.#lines.clear();
  }
}
