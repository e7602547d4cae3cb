import type { Notices } from "../../state/notices.svelte.ts";
import type { KeptSongs, Songbook } from "../../state/songbook.svelte.ts";
import type { BringIn } from "./bringIn.svelte.ts";

/** What is behind the door: the dialog and what it works on. */
type Room = {
  readonly Dialog: typeof import("./bringInDialog.svelte").default;
  readonly work: BringIn;
};

/** The way to bringing songs in, which is fetched when it is first gone through. */
export class BringInDoor {
  room: Room | null = $state.raw(null);
  open: boolean = $state(false);
  readonly #songbook: Songbook;
  readonly #notices: Notices;
  readonly #onKept: (result: KeptSongs) => void;

  constructor(songbook: Songbook, notices: Notices, onKept: (result: KeptSongs) => void) {
    this.#songbook = songbook;
    this.#notices = notices;
    this.#onKept = onKept;
  }

  /** Opens the dialog; files that were let fall are read at once. */
  async enter(files: readonly File[] = []): Promise<void> {
    try {
      const [{ default: Dialog }, { BringIn }, { readInWorker }] = await Promise.all([
        import("./bringInDialog.svelte"),
        import("./bringIn.svelte.ts"),
        import("./readInWorker.ts"),
      ]);
      this.room ??= { Dialog, work: new BringIn(this.#songbook, readInWorker) };
      this.open = true;
      await this.room.work.readFiles(files);
    } catch (thrown) {
      const reason = thrown instanceof Error ? thrown.message : String(thrown);
      const says = `Songs cannot be brought in now: ${reason}.`;
      this.#notices.complain({ code: "unreachable", says, try: "Try again; else start anew." });
    }
  }

  async keep(): Promise<void> {
    const work = this.room?.work;
    if (!work) return;
    const result = await work.keep();
    if (work.stage.kind === "choosing") this.open = false;
    if (result.kept.length > 0) this.#onKept(result);
  }

  /** Lets files fall here; what else is carried goes where it always goes. */
  carried(event: DragEvent): boolean {
    const isFile = event.dataTransfer?.types.includes("Files") === true;
    if (isFile) event.preventDefault();
    return isFile;
  }

  dropped(event: DragEvent): void {
    if (this.carried(event)) void this.enter([...(event.dataTransfer?.files ?? [])]);
  }
}
