import type { Later } from "./later.ts";

/** A text of at most this many characters (some 500 bars) is walked at every letter. */
export const WALKED_AT_ONCE = 6_000;
/** A longer one is walked when the typing has rested as long as this, in milliseconds. */
export const WALK_PAUSE_MS = 300;

/** The text that a song is walked from; while a long one is being typed it is behind, so that each letter is there at once. */
export class WalkedText {
  now: string;
  readonly #later: Later;
  #callOff: (() => void) | null = null;

  constructor(text: string, later: Later) {
    this.now = $state.raw(text);
    this.#later = later;
  }

  /** Goes after a new text: at once, unless it is long and being typed. */
  follow(text: string, isTyped: boolean): void {
    this.#callOff?.();
    this.#callOff = null;
    if (!isTyped || text.length <= WALKED_AT_ONCE) {
      this.now = text;
      return;
    }
    this.#callOff = this.#later(() => {
      this.now = text;
    }, WALK_PAUSE_MS);
  }
}
