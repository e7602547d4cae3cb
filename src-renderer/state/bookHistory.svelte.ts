import type { Problem } from "../../src-shared/host.ts";

/** Something that was done in the songbook and can be undone and done again. */
export type Step = {
  /** What was done, as in "Undone: delete “Otter Ford”". */
  readonly says: string;
  /** Gives why it could not be undone, or null. */
  readonly undo: () => Promise<Problem | null>;
  readonly redo: () => Promise<Problem | null>;
};

/** What has come of an undo or redo: the step that was taken, and why it failed. */
export type Taken = { readonly step: Step; readonly problem: Problem | null };

const LONGEST_PAST = 200;

/** What was done in the songbook since the start, to be undone step by step. */
export class BookHistory {
  past: readonly Step[] = $state.raw([]);
  future: readonly Step[] = $state.raw([]);
  #last: Promise<unknown> = Promise.resolve();

  /** Keeps a step that was done just now. */
  record(step: Step): void {
    this.past = [...this.past, step].slice(-LONGEST_PAST);
    this.future = [];
  }

  /** Undoes the last step; one that fails stays to be tried again. null where there is none. */
  undo(): Promise<Taken | null> {
    return this.#inTurn(async () => {
      const step = this.past.at(-1);
      if (!step) return null;
      const problem = await step.undo();
      if (!problem) {
        this.past = this.past.filter((other) => other !== step);
        this.future = [...this.future, step];
      }
      return { step, problem };
    });
  }

  /** Does the step again that was undone last. */
  redo(): Promise<Taken | null> {
    return this.#inTurn(async () => {
      const step = this.future.at(-1);
      if (!step) return null;
      const problem = await step.redo();
      if (!problem) {
        this.future = this.future.filter((other) => other !== step);
        this.past = [...this.past, step];
      }
      return { step, problem };
    });
  }

  /** One after the other, however fast the keys are pressed. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#last.then(work, work);
    this.#last = mine;
    return mine;
  }
}
