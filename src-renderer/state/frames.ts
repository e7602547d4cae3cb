import { untrack } from "svelte";
import type { Tick } from "../../src-shared/units.ts";

/** The one animation frame loop: everything that moves is called from it with the same tick. */
export class Frames {
  readonly #follow: () => Tick;
  readonly #callbacks = new Set<(at: Tick) => void>();
  #next: number | null = null;

  /** `follow` is called first on each frame and says where it is now. */
  constructor(follow: () => Tick) {
    this.#follow = follow;
  }

  subscribe(callback: (at: Tick) => void): () => void {
    this.#callbacks.add(callback);
    return () => {
      this.#callbacks.delete(callback);
    };
  }

  start(): void {
    this.#next ??= requestAnimationFrame(this.#frame);
  }

  stop(): void {
    if (this.#next !== null) {
      cancelAnimationFrame(this.#next);
      this.#next = null;
    }
  }

  /** Calls everyone now; what they read is theirs, also where an effect led here. */
  once(): void {
    const at = this.#follow();
    untrack(() => {
      for (const callback of this.#callbacks) {
        callback(at);
      }
    });
  }

  readonly #frame = (): void => {
    this.#next = requestAnimationFrame(this.#frame);
    this.once();
  };
}
