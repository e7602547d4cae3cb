import { words } from "../../../src-shared/wordTable.ts";
import type { WhyAnswer, WhyQuestion } from "./whyQuestion.ts";

/** Weighs the other places of one placement at a time. */
export class WhySearch {
  /** null while they are being weighed. */
  answer: WhyAnswer | null = $state.raw(null);
  /** Why the weighing broke off; null while all is well. */
  problem: string | null = $state(null);

  /** Starts anew; what it gives back ends it. */
  weigh(question: WhyQuestion): () => void {
    const ending = new AbortController();
    this.problem = null;
    this.#ask(question, ending.signal).catch((error: unknown) => {
      if (!ending.signal.aborted) this.#breakOff(String(error));
    });
    return () => {
      ending.abort();
      this.answer = null;
    };
  }

  /** The worker is fetched with the first question, not before. */
  async #ask(question: WhyQuestion, ending: AbortSignal): Promise<void> {
    const { default: WhyWorker } = await import("./whyWorker.ts?worker&inline");
    if (ending.aborted) return;
    const worker = new WhyWorker();
    ending.addEventListener("abort", () => worker.terminate());
    worker.addEventListener("message", ({ data }: MessageEvent<WhyAnswer>) => {
      this.answer = data;
      worker.terminate();
    });
    worker.addEventListener("error", ({ message }) => {
      this.#breakOff(message);
      worker.terminate();
    });
    worker.postMessage(question);
  }

  #breakOff(reason: string): void {
    this.problem = words.why.brokeOff(reason).trim();
  }
}
