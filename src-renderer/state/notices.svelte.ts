import type { Problem } from "../../src-shared/host.ts";
import { type Later, later } from "./later.ts";

/** A short message at the foot of the screen, with at most one thing to do about it. */
export type Notice = {
  readonly id: number;
  readonly kind: "done" | "problem";
  readonly says: string;
  readonly action: { readonly label: string; readonly run: () => void } | null;
  /** What it is about, for whoever has to take it away again; null where no one has. */
  readonly about: string | null;
};

/** A message stays this long, in milliseconds; while it is pointed at or focused it stays longer. */
export const NOTICE_MS = 12_000;

/** The messages that show now, the oldest first. */
export class Notices {
  all: readonly Notice[] = $state.raw([]);
  readonly #later: Later;
  readonly #callOffs = new Map<number, () => void>();
  #next = 1;

  constructor(wait: Later = later) {
    this.#later = wait;
  }

  say(says: string, action: Notice["action"] = null, about: string | null = null): void {
    this.#add({ id: this.#next++, kind: "done", says, action, about });
  }

  /** A problem stays until it is dismissed. */
  complain({ says, try: advice }: Problem, action: Notice["action"] = null): void {
    const said = `${says} ${advice}`;
    if (this.all.some((notice) => notice.says === said)) return;
    this.#add({ id: this.#next++, kind: "problem", says: said, action, about: null });
  }

  /** Runs the notice's action, and is done with it. */
  act(notice: Notice): void {
    this.dismiss(notice.id);
    notice.action?.run();
  }

  dismiss(id: number): void {
    this.hold(id);
    this.all = this.all.filter((notice) => notice.id !== id);
  }

  /** Takes away what has been said about something that is no longer so. */
  dismissAbout(about: string): void {
    for (const notice of this.all) if (notice.about === about) this.dismiss(notice.id);
  }

  /** Someone is reading it: it stays until let go. */
  hold(id: number): void {
    this.#callOffs.get(id)?.();
    this.#callOffs.delete(id);
  }

  letGo(id: number): void {
    this.hold(id);
    const notice = this.all.find((other) => other.id === id);
    if (notice?.kind !== "done") return;
    this.#callOffs.set(
      id,
      this.#later(() => this.dismiss(id), NOTICE_MS),
    );
  }

  #add(notice: Notice): void {
    this.all = [...this.all, notice];
    this.letGo(notice.id);
  }
}
