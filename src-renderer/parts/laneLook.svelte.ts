/** Runs `work` once after `ms` milliseconds; the answer calls it off. */
type Wait = (work: () => void, ms: number) => () => void;

/** Untouched for so long, in milliseconds, the lanes come back to now while the music plays. */
export const LOOK_MS = 4000;

/** What the lanes do for a look: draw themselves anew, and say how far one can look. */
export type Looked = {
  readonly draw: () => void;
  /** The nearest ticks from now that can be looked at. */
  readonly within: (ahead: number) => number;
};

/** A look ahead (or back) along the lanes while the music goes on. */
export class LaneLook {
  /** Something else than now is looked at. */
  away: boolean = $state(false);
  /** The player holds the lanes. */
  held: boolean = $state(false);
  #ahead = 0;
  #plays = false;
  #looked: Looked | null = null;
  #callOff: (() => void) | null = null;
  readonly #wait: Wait;

  constructor(wait: Wait) {
    this.#wait = wait;
  }

  /** Ticks from now to what is looked at in its stead; negative is back. */
  get ahead(): number {
    return this.#ahead;
  }

  /** The lanes that are looked along; the answer takes them away again. */
  attach(looked: Looked): () => void {
    this.#looked = looked;
    return () => {
      this.#looked = null;
      this.#become(0);
    };
  }

  take(): void {
    this.held = true;
    this.#callOff?.();
  }

  letGo(): void {
    this.held = false;
    this.#comeBackSoon();
  }

  /** So many ticks further on; back where it is negative. */
  by(ticks: number): void {
    const wanted = this.#ahead + ticks;
    this.#become(this.#looked?.within(wanted) ?? 0);
    this.#comeBackSoon();
  }

  backToNow(): void {
    this.#callOff?.();
    this.#become(0);
  }

  /** Whether the music goes on: while it rests, so may the look. */
  music(plays: boolean): void {
    this.#plays = plays;
    this.#comeBackSoon();
  }

  #become(ahead: number): void {
    this.#ahead = ahead;
    this.away = Math.round(ahead) !== 0;
    this.#looked?.draw();
  }

  #comeBackSoon(): void {
    this.#callOff?.();
    const waits = this.#plays && !this.held && this.#ahead !== 0;
    this.#callOff = waits ? this.#wait(() => this.#become(0), LOOK_MS) : null;
  }
}
