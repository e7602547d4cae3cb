import type { Answer, Problem } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { type Later, later } from "./later.ts";

/** How far the newest value has got: `waiting` for a pause in the edits, `failed` with a problem. */
export type Saving = "saved" | "waiting" | "saving" | "failed";

/** After the last edit, the time until it is written, in milliseconds. */
export const AUTOSAVE_PAUSE_MS = 600;

/** After a failure it is tried again by itself: after this long, then after twice as long, and so on. */
export const RETRY_MS = 2_000;
/** The longest wait between two tries, in milliseconds. */
export const LONGEST_RETRY_MS = 60_000;

/** What trying again by itself may cure: not what another program has written, nor a song that is gone. */
const mayPass = ({ code }: Problem): boolean => code === "disk" || code === "unreachable";

const ourMistake = (thrown: unknown): Problem => ({
  code: "bug",
  says: words.save.stopped(thrown instanceof Error ? thrown.message : String(thrown)),
  try: words.save.stoppedTry,
});

/**
 * Writes the newest value offered, one write at a time, after a pause or at once. A value that could
 * not be written is kept, and goes out with the next try, which comes by itself where time may help.
 */
export class Autosave<Value> {
  state: Saving = $state("saved");
  problem: Problem | null = $state.raw(null);
  readonly #write: (value: Value) => Promise<Answer<null>>;
  readonly #later: Later;
  #waiting: { readonly value: Value } | null = null;
  #running: Promise<void> | null = null;
  #callOff: (() => void) | null = null;
  #retryMs = RETRY_MS;

  constructor(write: (value: Value) => Promise<Answer<null>>, wait: Later = later) {
    this.#write = write;
    this.#later = wait;
  }

  /** Takes a new value, to be written after the pause. */
  offer(value: Value): void {
    this.#waiting = { value };
    if (!this.#running) this.state = "waiting";
    this.#callOff?.();
    this.#callOff = this.#later(() => this.flush(), AUTOSAVE_PAUSE_MS);
  }

  /** Writes now what has not been written, and what is offered meanwhile; done when all is, or one failed. */
  flush(): Promise<void> {
    return this.#run(true);
  }

  /** Forgets what has not been written: its song is gone. */
  abandon(): void {
    this.#callOff?.();
    this.#callOff = null;
    this.#waiting = null;
    if (this.#running) return;
    this.problem = null;
    this.state = "saved";
  }

  /** Writes nothing more until the next offer; done when a write under way has ended. */
  async callOff(): Promise<void> {
    this.#callOff?.();
    this.#callOff = null;
    this.#waiting = null;
    await this.#running;
  }

  #run(isSeen: boolean): Promise<void> {
    this.#callOff?.();
    this.#callOff = null;
    this.#running ??= this.#drain(isSeen).finally(() => {
      this.#running = null;
    });
    return this.#running;
  }

  async #drain(isSeen: boolean): Promise<void> {
    while (this.#waiting) {
      const sent = this.#waiting;
      this.#waiting = null;
      if (isSeen || this.state !== "failed") this.state = "saving";
      const problem = await this.#attempt(sent.value);
      if (problem) {
        this.#waiting ??= sent;
        this.problem = problem;
        this.state = "failed";
        if (mayPass(problem)) this.#tryAgainLater();
        return;
      }
      this.problem = null;
      this.#retryMs = RETRY_MS;
    }
    this.state = "saved";
  }

  #tryAgainLater(): void {
    this.#callOff?.();
    // What is said of the failure stays while it is tried again: words that come and go are no help.
    this.#callOff = this.#later(() => this.#run(false), this.#retryMs);
    this.#retryMs = Math.min(this.#retryMs * 2, LONGEST_RETRY_MS);
  }

  async #attempt(value: Value): Promise<Problem | null> {
    try {
      const answer = await this.#write(value);
      return answer.ok ? null : answer.problem;
    } catch (thrown) {
      return ourMistake(thrown);
    }
  }
}
