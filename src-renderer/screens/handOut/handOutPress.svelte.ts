import type { Book } from "../../../src-shared/sheet/page.ts";
import type { FontFile } from "../../../src-shared/sheet/typefaces.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { HandOutMessage, HandOutQuestion, HandOutRequest } from "./handOutMessage.ts";
import { fetchSheetFonts, showSheetFonts } from "./sheetFonts.ts";

/** How far the PDF is. */
export type PdfWork =
  | { readonly kind: "none" }
  | { readonly kind: "working"; readonly share: number };

type Answer = (message: HandOutMessage) => void;

/** Sets the pages of a hand-out beside the screen, and writes them as a PDF. */
export class HandOutPress {
  /** null until the first pages are set. */
  book: Book | null = $state.raw(null);
  /** Newer pages are being set. */
  laying: boolean = $state(false);
  /** Signs that the printed fonts lack. */
  missing: readonly string[] = $state.raw([]);
  work: PdfWork = $state.raw({ kind: "none" });
  /** Why nothing came; null while all is well. */
  problem: string | null = $state(null);
  #fonts: Promise<readonly FontFile[]> | null = null;
  #hide: (() => void) | null = null;
  #pdf: AbortController | null = null;

  /** Sets the pages anew; what comes back gives it up. */
  lay(request: HandOutRequest): () => void {
    const ending = new AbortController();
    this.laying = true;
    this.#ask(request, "pages", ending.signal, (message) => {
      if (message.kind !== "pages") return;
      this.book = message.book;
      this.missing = message.missing;
      this.problem = null;
      this.laying = false;
    }).catch((error: unknown) => this.#fail(error, ending.signal));
    return () => ending.abort();
  }

  /** The pages as the bytes of a PDF file; null where it was called off or failed. */
  async write(request: HandOutRequest): Promise<Uint8Array<ArrayBuffer> | null> {
    this.cancel();
    const ending = new AbortController();
    this.#pdf = ending;
    this.work = { kind: "working", share: 0 };
    let bytes: Uint8Array<ArrayBuffer> | null = null;
    try {
      await this.#ask(request, "pdf", ending.signal, (message) => {
        if (message.kind === "progress") this.work = { kind: "working", share: message.share };
        if (message.kind === "pdf") bytes = message.bytes;
      });
    } catch (error) {
      this.#fail(error, ending.signal);
    }
    if (this.#pdf === ending) this.work = { kind: "none" };
    return bytes;
  }

  /** Stops what is being written. */
  cancel(): void {
    this.#pdf?.abort();
    this.#pdf = null;
    this.work = { kind: "none" };
  }

  /** Gives everything back. */
  end(): void {
    this.cancel();
    this.#hide?.();
    this.#hide = null;
  }

  #fail(error: unknown, ending: AbortSignal): void {
    if (ending.aborted) return;
    const reason = error instanceof Error ? error.message : String(error);
    this.problem = words.handOut.failed(reason);
    this.laying = false;
  }

  async #fetchFonts(): Promise<readonly FontFile[]> {
    const fonts = await fetchSheetFonts();
    this.#hide = await showSheetFonts(fonts);
    return fonts;
  }

  /** Asks a worker of its own; fonts and worker are fetched with the first question. */
  async #ask(
    request: HandOutRequest,
    want: HandOutQuestion["want"],
    ending: AbortSignal,
    take: Answer,
  ): Promise<void> {
    this.#fonts ??= this.#fetchFonts();
    const [fonts, { default: HandOutWorker }] = await Promise.all([
      this.#fonts,
      import("./handOutWorker.ts?worker&inline"),
    ]);
    if (ending.aborted) return;
    const worker = new HandOutWorker();
    const done = new Promise<void>((resolve, reject) => {
      ending.addEventListener("abort", () => resolve());
      worker.addEventListener("error", ({ message }) => reject(new Error(message)));
      worker.addEventListener("message", ({ data }: MessageEvent<HandOutMessage>) => {
        if (data.kind === "failed") reject(new Error(data.reason));
        else take(data);
        if (data.kind === want) resolve();
      });
    });
    worker.postMessage({ ...request, want, fonts, nowMs: Date.now() } satisfies HandOutQuestion);
    await done.finally(() => worker.terminate());
  }
}
