import { words } from "../../src-shared/wordTable.ts";

/** A browser that has not let the sound start after this time waits for a click. In ms. */
const PATIENCE = 1500;
/** The output's clock moves in steps of at most some hundredths of a second; still for so long, it has stopped. In ms. */
const STALLED = 1000;
/** After a sound card came or went, its clock is trusted less for some time. Both in ms. */
const STALLED_IN_DOUBT = 200;
const DOUBT = 3000;

/** What is asked of a live context. */
type LiveContext = Pick<AudioContext, "state" | "currentTime" | "resume" | "suspend"> &
  Pick<EventTarget, "addEventListener" | "removeEventListener">;

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
    const refuse = (): void => reject(new Error(words.sound.heldBack));
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
  readonly #context: LiveContext;
  readonly #devices: EventTarget | null;
  readonly #wish: Wish;
  #reviving = false;
  #moved = { audio: -1, system: 0 };
  #doubtUntil = 0;
  readonly #stateChange = (): void => {
    if (!this.#isRunning()) {
      void this.#revive();
    }
  };

  readonly #deviceChange = (): void => {
    this.#doubtUntil = performance.now() + DOUBT;
    this.#stateChange();
  };

  /** `devices` tells when a sound card comes or goes; null where the browser keeps that to itself. */
  constructor(
    context: LiveContext,
    wish: Wish,
    devices: EventTarget | null = navigator.mediaDevices ?? null,
  ) {
    this.#context = context;
    this.#devices = devices;
    this.#wish = wish;
    context.addEventListener("statechange", this.#stateChange);
    devices?.addEventListener("devicechange", this.#deviceChange);
  }

  /** Throws where the browser or the system refuses. */
  async wake(): Promise<void> {
    this.#moved = { audio: -1, system: performance.now() };
    if (this.#isRunning()) {
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
    } else if (system - this.#moved.system > this.#patience(system) && this.#isRunning()) {
      this.#moved = { audio, system };
      void this.#revive();
    }
  }

  dispose(): void {
    this.#context.removeEventListener("statechange", this.#stateChange);
    this.#devices?.removeEventListener("devicechange", this.#deviceChange);
  }

  #isRunning(): boolean {
    return this.#context.state === "running";
  }

  #patience(system: number): number {
    return system < this.#doubtUntil ? STALLED_IN_DOUBT : STALLED;
  }

  /** A context that says it runs and does not is stopped first. */
  async #revive(): Promise<void> {
    if (this.#reviving || this.#context.state === "closed" || !this.#wish.needed()) {
      return;
    }
    this.#reviving = true;
    try {
      if (this.#isRunning()) {
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
