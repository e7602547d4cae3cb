import { parentPort, workerData } from "node:worker_threads";
import { areas } from "./areas.ts";
import { closeService } from "./serviceArea.ts";

/** What the launcher asks of this thread: one area, from where to where. */
type Order = {
  readonly area: string;
  readonly cases: number;
  readonly seed: number;
  readonly path: string | null;
  /** Where the launcher sees how many cases were begun. */
  readonly begun: Int32Array;
};

const { area, cases, seed, path, begun }: Order = workerData;
const found = areas.find(({ name }) => name === area);
if (!found) {
  throw new Error(`there is no area ${area}`);
}
const onCase = (index: number): void => {
  Atomics.store(begun, 0, index + 1);
};
const failure = await found.run({ cases, seed, onCase, ...(path === null ? {} : { path }) });
await closeService();
parentPort?.postMessage({ failure });
