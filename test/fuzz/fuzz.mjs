// npm run fuzz -- --cases 1000000 --seed 7 [--area chart] [--path 123]
// Tries so many cases over all areas (or one); a failure prints its seed and its smallest case. Each
// area runs in a thread of its own: one that hangs or grows is ended, and its case is named.
import { join } from "node:path";
import { parseArgs } from "node:util";
import { Worker } from "node:worker_threads";
import { build } from "vite";

/** Shares of the cases: the dearer an area's case, the fewer. */
const shares = {
  chart: 12,
  settings: 10,
  patterns: 12,
  shared: 6,
  abc: 15,
  musicxml: 20,
  mxl: 22,
  service: 3,
};
/** Of the processor, so that a busy machine is not taken for a hanging case; or waiting so long. */
const HANGS_AFTER_MS = 60_000;
const WAITS_AT_MOST_MS = 15 * 60_000;
const MOST_MEGABYTES = 512;

const { values } = parseArgs({
  options: {
    cases: { type: "string", default: "20000" },
    seed: { type: "string" },
    area: { type: "string" },
    path: { type: "string" },
  },
});
const cases = Number(values.cases);
const seed = values.seed === undefined ? Math.trunc(Math.random() * 2 ** 31) : Number(values.seed);
const names = values.area === undefined ? Object.keys(shares) : [values.area];
if (!(Number.isInteger(cases) && cases > 0 && Number.isInteger(seed))) {
  console.error("--cases and --seed are whole numbers.");
  process.exit(2);
}
if (names.some((name) => !(name in shares))) {
  console.error(`--area is one of ${Object.keys(shares).join(", ")}.`);
  process.exit(2);
}

const root = join(import.meta.dirname ?? new URL(".", import.meta.url).pathname, "../..");
const outDir = join(root, "out/fuzz");
await build({
  root,
  configFile: false,
  logLevel: "error",
  build: { ssr: "test/fuzz/worker.ts", outDir, emptyOutDir: true, target: "node20" },
});

/** The processor's time of this program, whose main thread only waits, and the wall's. */
const clocks = () => {
  const { user, system } = process.cpuUsage();
  return { busy: (user + system) / 1000, wall: Date.now() };
};

/** One area in a thread of its own: null, or what went wrong. */
const runArea = (area, count) =>
  new Promise((resolve) => {
    const begun = new Int32Array(new SharedArrayBuffer(4));
    const worker = new Worker(join(outDir, "worker.js"), {
      workerData: { area, cases: count, seed, path: values.path ?? null, begun },
      resourceLimits: { maxOldGenerationSizeMb: MOST_MEGABYTES },
    });
    let last = 0;
    let since = clocks();
    const watch = setInterval(() => {
      const now = Atomics.load(begun, 0);
      if (now !== last) {
        last = now;
        since = clocks();
        return;
      }
      const { busy, wall } = clocks();
      if (busy - since.busy > HANGS_AFTER_MS || wall - since.wall > WAITS_AT_MOST_MS) {
        end(
          `${area}: case ${now - 1} does not end: --area ${area} --seed ${seed} --path ${now - 1}`,
        );
      }
    }, 1000);
    const end = (failure) => {
      clearInterval(watch);
      void worker.terminate();
      resolve(failure);
    };
    worker.on("message", ({ failure }) => end(failure));
    worker.on("error", (error) =>
      end(
        `${area}: ${error.message}, at case ${Atomics.load(begun, 0) - 1}: ` +
          `--area ${area} --seed ${seed} --path ${Atomics.load(begun, 0) - 1}`,
      ),
    );
    worker.on("exit", (code) => end(`${area}: its thread ended with ${code}`));
  });

const whole = names.reduce((sum, name) => sum + shares[name], 0);
console.log(`${cases} cases from seed ${seed}`);
let failures = 0;
for (const name of names) {
  const count = Math.max(1, Math.round((cases * shares[name]) / whole));
  const start = Date.now();
  const failure = await runArea(name, count);
  const seconds = ((Date.now() - start) / 1000).toFixed(1);
  console.log(failure === null ? `${name}: ${count} cases hold (${seconds} s)` : failure);
  failures += failure === null ? 0 : 1;
}
process.exitCode = failures === 0 ? 0 : 1;
