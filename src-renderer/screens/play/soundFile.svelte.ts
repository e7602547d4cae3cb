import { words } from "../../../src-shared/wordTable.ts";
import type { WavWork } from "../../parts/wavChoice.ts";
import type { Rendering } from "../../sound/renderOffline.ts";
import type { Bits } from "../../sound/writeWav.ts";
import { download } from "../download.ts";

/** One sound file after another, each written while the player waits or cancels. */
export class SoundFile {
  work: WavWork = $state.raw({ kind: "none" });
  #stop: AbortController | null = null;

  async save(rendering: Rendering, bits: Bits, fileName: string): Promise<void> {
    this.cancel();
    const stop = new AbortController();
    this.#stop = stop;
    this.work = { kind: "working", share: 0 };
    try {
      const { renderWav } = await import("../../sound/renderWav.ts");
      const progress = (share: number): void => {
        if (!stop.signal.aborted) this.work = { kind: "working", share };
      };
      const bytes = await renderWav(rendering, bits, { progress, signal: stop.signal });
      stop.signal.throwIfAborted();
      download(bytes, "audio/wav", fileName);
      this.work = { kind: "saved", fileName };
    } catch (thrown) {
      if (stop.signal.aborted) return;
      const reason = thrown instanceof Error ? thrown.message : String(thrown);
      const says = words.wav.failed(reason);
      this.work = { kind: "failed", says };
    }
  }

  /** Stops what is being written; nothing is saved. */
  cancel(): void {
    this.#stop?.abort();
    this.#stop = null;
    this.work = { kind: "none" };
  }
}
