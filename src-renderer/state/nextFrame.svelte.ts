import { untrack } from "svelte";

/** A value as it was so many whole frames ago: what can wait does not fall into the frame of a change. */
export class NextFrame<T> {
  #shown: T;

  /** Made within a component, which ends it. Of values in quick succession the last is shown. */
  constructor(value: () => T, frames: number) {
    this.#shown = $state.raw(untrack(value));
    $effect(() => {
      const next = value();
      if (next === untrack(() => this.#shown)) return;
      let waits = frames;
      let request = 0;
      const frame = (): void => {
        waits -= 1;
        if (waits === 0) this.#shown = next;
        else request = requestAnimationFrame(frame);
      };
      request = requestAnimationFrame(frame);
      return () => cancelAnimationFrame(request);
    });
  }

  get value(): T {
    return this.#shown;
  }
}
