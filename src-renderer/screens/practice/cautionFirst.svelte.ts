import type { PreferencesState } from "../../state/preferences.svelte.ts";

/** Before the first sound ever the caution about loudness and strain comes first. */
export class CautionFirst {
  open: boolean = $state(false);
  readonly #preferences: PreferencesState;
  #waiting: (() => void) | null = null;

  constructor(preferences: PreferencesState) {
    this.#preferences = preferences;
  }

  /** Does it at once where the caution has been read, else once it is. */
  before(work: () => void): void {
    if (this.#preferences.value.cautionRead) {
      work();
    } else {
      this.#waiting = work;
      this.open = true;
    }
  }

  read(): void {
    this.#preferences.change({ cautionRead: true });
    const work = this.#waiting;
    this.close();
    work?.();
  }

  close(): void {
    this.open = false;
    this.#waiting = null;
  }
}
