import type { Route } from "../../../src-shared/route/route.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { RouteFinds, RouteQuestion } from "./routeQuestion.ts";

/** Looks for other routes of a song, one question at a time. */
export class RouteSearch {
  /** Found so far, the best first. */
  found: readonly Route[] = $state.raw([]);
  looking: boolean = $state(false);
  /** Why the search broke off; null while all is well. */
  problem: string | null = $state(null);

  /** Starts anew; the answer ends the search. */
  look(question: RouteQuestion): () => void {
    const ending = new AbortController();
    this.found = [];
    this.problem = null;
    this.looking = true;
    this.#ask(question, ending.signal).catch((error: unknown) => {
      if (!ending.signal.aborted) this.#breakOff(String(error));
    });
    return () => ending.abort();
  }

  /** The worker is fetched on the first search, not before. */
  async #ask(question: RouteQuestion, ending: AbortSignal): Promise<void> {
    const { default: RoutesWorker } = await import("./routesWorker.ts?worker&inline");
    if (ending.aborted) return;
    const worker = new RoutesWorker();
    ending.addEventListener("abort", () => worker.terminate());
    worker.addEventListener("message", ({ data }: MessageEvent<RouteFinds>) => {
      this.found = data.routes;
      this.looking = data.more;
      if (!data.more) worker.terminate();
    });
    worker.addEventListener("error", ({ message }) => {
      this.#breakOff(message);
      worker.terminate();
    });
    worker.postMessage(question);
  }

  #breakOff(reason: string): void {
    this.looking = false;
    this.problem = words.routes.brokeOff(reason).trim();
  }
}
