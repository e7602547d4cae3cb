/** What is used of a wake lock that is held. */
export type HeldLock = EventTarget & { release(): Promise<void> };

/** What is used of the Screen Wake Lock API. */
export type WakeLocks = { request(kind: "screen"): Promise<HeldLock> };

/** What is used of the page: whether it shows, and when that changes. */
export type Page = EventTarget & { readonly visibilityState: DocumentVisibilityState };

/** Keeps the screen awake as long as it is asked to and the page shows. */
export class WakefulScreen {
  /** Why the screen may go dark: no such API, or refused, as on a low battery. */
  trouble: "absent" | "refused" | null = $state(null);
  readonly #locks: WakeLocks | null;
  readonly #page: Page;
  #wanted = false;
  #asking = false;
  #held: HeldLock | null = null;

  constructor(locks: WakeLocks | null, page: Page) {
    this.#locks = locks;
    this.#page = page;
    this.trouble = locks ? null : "absent";
    page.addEventListener("visibilitychange", this.#see);
  }

  /** From now on awake, or free to sleep. */
  keep(awake: boolean): void {
    this.#wanted = awake;
    this.#see();
  }

  dispose(): void {
    this.#page.removeEventListener("visibilitychange", this.#see);
    this.keep(false);
  }

  readonly #see = (): void => void this.#settle();

  /** The system itself lets go of the lock when the page is hidden. */
  async #settle(): Promise<void> {
    if (!this.#wanted) {
      const held = this.#held;
      this.#held = null;
      await held?.release();
      return;
    }
    const shows = this.#page.visibilityState === "visible";
    if (!this.#locks || this.#held || this.#asking || !shows) return;
    this.#asking = true;
    try {
      const held = await this.#locks.request("screen");
      held.addEventListener("release", () => {
        if (this.#held === held) this.#held = null;
      });
      this.#held = held;
      this.trouble = null;
    } catch {
      this.trouble = "refused";
    }
    this.#asking = false;
    if (!this.#wanted) await this.#settle();
  }
}
