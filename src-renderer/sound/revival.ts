/** A browser that has not let the sound start after this time waits for a click. In ms. */
const PATIENCE = 1500;
/** The output's clock moves in steps of at most some hundredths of a second; still for so long, it has stopped. In ms. */
const STALLED = 1000;

/** Who is to know. */
export type Wish = {
  /** Sound is wanted at this moment. */
  needed(): boolean;
  /** The system had stopped the sound by itself; it goes on, at the place where it stopped. */
  recovered(): void;
  /** It stopped, and cannot be woken up. */
  lost(): void;
};

const inTime = async (answer: Promise<void>): Promise<void> => {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const refused = new Promise<never>((_, reject) => {
    const refuse = (): void => reject(new Error("The browser holds the sound back."));
    waiting = setTimeout(refuse, PATIENCE);
  });
  try {
    await Promise.race([answer, refused]);
  } finally {
    clearTimeout(waiting);
  }
};

/**
 * Wakes a live context up, also when the system stops it by itself: a call, a sleeping machine, a
 * sound card that is unplugged. What is handed out waits in the context and sounds when it goes on.
 */
export class Revival {
  readonly #context: AudioContext;
  readonly #wish: Wish;
  #reviving = false;
  #moved = { audio: -1, system: 0 };
  readonly #stateChange = (): void => {
    if (this.#context.state !== "running") {
      void this.#revive();
    }
  };

  constructor(context: AudioContext, wish: Wish) {
    this.#context = context;
    this.#wish = wish;
    context.addEventListener("statechange", this.#stateChange);
  }

  /** Throws where the browser or the system refuses. */
  async wake(): Promise<void> {
    this.#moved = { audio: -1, system: performance.now() };
    if (this.#context.state === "running") {
      return;
    }
    await inTime(this.#context.resume());
  }

  /** Looks whether the output's clock moves, which no event tells when a sound card is gone. Call it often. */
  look(): void {
    const audio = this.#context.currentTime;
    const system = performance.now();
    if (audio !== this.#moved.audio) {
      this.#moved = { audio, system };
    } else if (system - this.#moved.system > STALLED && this.#context.state === "running") {
      this.#moved = { audio, system };
      void this.#revive();
    }
  }

  dispose(): void {
    this.#context.removeEventListener("statechange", this.#stateChange);
  }

  /** A context that says it runs and does not is stopped first. */
  async #revive(): Promise<void> {
    if (this.#reviving || this.#context.state === "closed" || !this.#wish.needed()) {
      return;
    }
    this.#reviving = true;
    try {
      if (this.#context.state === "running") {
        await inTime(this.#context.suspend());
      }
      await this.wake();
      this.#wish.recovered();
    } catch {
      this.#wish.lost();
    } finally {
      this.#reviving = false;
    }
  }
}
