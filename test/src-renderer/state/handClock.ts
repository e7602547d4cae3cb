import type { Later } from "../../../src-renderer/state/later.ts";
import type { SongClock } from "../../../src-renderer/state/openSong.svelte.ts";

/** A clock that a test turns by hand. */
export class HandClock implements SongClock {
  #now = 50_000;
  #due: { readonly atMs: number; readonly work: () => void }[] = [];

  readonly nowMs = (): number => this.#now;

  readonly later: Later = (work, ms) => {
    const entry = { atMs: this.#now + ms, work };
    this.#due.push(entry);
    return () => {
      this.#due = this.#due.filter((other) => other !== entry);
    };
  };

  /** Turns it on by `ms`, and does what has come due. */
  turn(ms: number): void {
    this.#now += ms;
    const due = this.#due.filter(({ atMs }) => atMs <= this.#now);
    this.#due = this.#due.filter((entry) => !due.includes(entry));
    for (const { work } of due) work();
  }
}
