import type { FoundRow } from "../../parts/foundSongs.ts";
import type { ReadFiles, ReadingMessage } from "./readingMessage.ts";

/** Reads files beside the screen; the readers are fetched with the first file, not before. */
export const readInWorker: ReadFiles = async (files, onProgress, signal) => {
  const { default: ImportWorker } = await import("./importWorker.ts?worker&inline");
  signal.throwIfAborted();
  const worker = new ImportWorker();
  const reading = new Promise<readonly FoundRow[]>((done, failed) => {
    signal.addEventListener("abort", () => failed(signal.reason));
    worker.addEventListener("message", ({ data }: MessageEvent<ReadingMessage>) => {
      if (data.kind === "done") done(data.rows);
      else onProgress(data.progress);
    });
    worker.addEventListener("error", ({ message }) => failed(new Error(message)));
    worker.postMessage(files);
  });
  return reading.finally(() => worker.terminate());
};
