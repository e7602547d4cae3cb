import type { PreferencesState } from "./preferences.svelte.ts";

/** Before the first sound ever the caution about loudness and strain comes first. */
export class CautionFirst {
  /** It is on the screen. */
  open: boolean = $state(false);
  readonly #preferences: PreferencesState;
  #waiting: (() => unknown) | null = null;

  constructor(preferences: PreferencesState) {
    this.#preferences = preferences;
  }

  /** Does it at once where the caution has been read, else once it is. */
  async before(work: () => unknown): Promise<void> {
    if (this.#preferences.value.cautionRead) {
      await work();
    } else {
      this.#waiting = work;
      this.open = true;
    }
  }

  async read(): Promise<void> {
    this.#preferences.change({ cautionRead: true });
    const work = this.#waiting;
    this.close();
    await work?.();
  }

  close(): void {
    this.open = false;
    this.#waiting = null;
  }
}
