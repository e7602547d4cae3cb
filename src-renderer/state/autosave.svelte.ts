import type { Answer, Problem } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { type Later, later } from "./later.ts";

/** How far the newest value has got: `waiting` for a pause in the edits, `failed` with a problem. */
export type Saving = "saved" | "waiting" | "saving" | "failed";

/** After the last edit, the time until it is written, in milliseconds. */
export const AUTOSAVE_PAUSE_MS = 600;

const ourMistake = (thrown: unknown): Problem => ({
  code: "bug",
  says: words.save.stopped(thrown instanceof Error ? thrown.message : String(thrown)),
  try: words.save.stoppedTry,
});

/**
 * Writes the newest value offered, one write at a time, after a pause or at once. A value that could
 * not be written is kept, and goes out with the next try.
 */
export class Autosave<Value> {
  state: Saving = $state("saved");
  problem: Problem | null = $state.raw(null);
  readonly #write: (value: Value) => Promise<Answer<null>>;
  readonly #later: Later;
  #waiting: { readonly value: Value } | null = null;
  #running: Promise<void> | null = null;
  #callOff: (() => void) | null = null;

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
    this.#callOff?.();
    this.#callOff = null;
    this.#running ??= this.#drain().finally(() => {
      this.#running = null;
    });
    return this.#running;
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

  async #drain(): Promise<void> {
    while (this.#waiting) {
      const sent = this.#waiting;
      this.#waiting = null;
      this.state = "saving";
      const problem = await this.#attempt(sent.value);
      if (problem) {
        this.#waiting ??= sent;
        this.problem = problem;
        this.state = "failed";
        return;
      }
      this.problem = null;
    }
    this.state = "saved";
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
