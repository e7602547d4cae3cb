import { type ShelfEdit, withOpened } from "../../src-shared/book/editShelf.ts";
import { emptyShelf, type Shelf } from "../../src-shared/book/shelf.ts";
import type { Host, Problem } from "../../src-shared/host.ts";

/** So often an edit is made anew on what someone else has written meanwhile. */
const MOST_TRIES = 3;

/** Tags and set lists, as the host has them. */
export class ShelfState {
  value: Shelf = $state.raw(emptyShelf);
  readonly #host: Host;
  #last: Promise<unknown> = Promise.resolve();

  constructor(host: Host) {
    this.#host = host;
  }

  /** Reads it anew; gives why not, or null. */
  read(): Promise<Problem | null> {
    return this.#inTurn(() => this.#read());
  }

  /**
   * Makes an edit and writes it. Where another window has written meanwhile the edit is made on that,
   * so neither's is lost. Gives why it is not kept, or null.
   */
  edit(edit: ShelfEdit): Promise<Problem | null> {
    return this.#inTurn(() => this.#write(edit));
  }

  /** Notes that a song is open now. */
  async opened(id: string, nowMs: number): Promise<Problem | null> {
    const answer = await this.#host.markOpened({ id });
    if (!answer.ok) return answer.problem;
    this.value = withOpened(this.value, id, nowMs);
    return null;
  }

  async #read(): Promise<Problem | null> {
    const answer = await this.#host.readShelf(null);
    if (!answer.ok) return answer.problem;
    this.value = answer.value;
    return null;
  }

  async #write(edit: ShelfEdit): Promise<Problem | null> {
    let problem: Problem | null = null;
    for (let tries = 0; tries < MOST_TRIES; tries += 1) {
      const next = edit(this.value);
      if (next === this.value) return null;
      const answer = await this.#host.writeShelf(next);
      if (answer.ok) {
        this.value = { ...next, revision: answer.value.revision };
        return null;
      }
      problem = answer.problem;
      if (problem.code !== "changed") return problem;
      const unread = await this.#read();
      if (unread) return unread;
    }
    return problem;
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#last.then(work, work);
    this.#last = mine;
    return mine;
  }
}
