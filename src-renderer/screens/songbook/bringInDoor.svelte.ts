import { takenIn } from "../../../src-shared/exchange/patternFile.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { AppState } from "../../state/context.ts";
import type { KeptSongs } from "../../state/songbook.svelte.ts";
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
  /** Files are carried over the page. */
  over: boolean = $state(false);
  readonly #app: AppState;
  readonly #onKept: (result: KeptSongs) => void;

  constructor(app: AppState, onKept: (result: KeptSongs) => void) {
    this.#app = app;
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
      const take = (patterns: readonly Pattern[]): ReadonlyMap<string, string> =>
        this.#takePatterns(patterns);
      this.room ??= { Dialog, work: new BringIn(this.#app.songbook, readInWorker, take) };
      this.open = true;
      await this.room.work.readFiles(files);
    } catch (thrown) {
      const reason = thrown instanceof Error ? thrown.message : String(thrown);
      const says = words.found.noDoor(reason);
      this.#app.notices.complain({ code: "unreachable", says, try: words.found.noDoorTry });
    }
  }

  /** Brings in what the system handed to the program, where it has handed anything. */
  async takeHanded(): Promise<void> {
    const { host, notices } = this.#app;
    const answer = await host.takeFiles(null);
    if (!answer.ok) {
      notices.complain(answer.problem);
      return;
    }
    const files = answer.value.map(({ name, base64 }) => new File([bytesOf(base64)], name));
    if (files.length > 0) await this.enter(files);
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
    this.over = isFile;
    return isFile;
  }

  /** What was carried has left the page; from one thing on it to the next it has not. */
  left(event: DragEvent): void {
    if (event.relatedTarget === null) this.over = false;
  }

  dropped(event: DragEvent): void {
    const isFile = this.carried(event);
    this.over = false;
    if (isFile) void this.enter([...(event.dataTransfer?.files ?? [])]);
  }

  #takePatterns(others: readonly Pattern[]): ReadonlyMap<string, string> {
    const { patterns } = this.#app;
    const taken = takenIn(patterns.value, others);
    if (taken.patterns.length > patterns.value.length) patterns.replace(taken.patterns);
    return new Map(taken.renamed.map(({ from, to }) => [from, to]));
  }
}

const bytesOf = (base64: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
