const room = process.env.MUTATION_ROOM ?? "";

/** @type {import("@stryker-mutator/api/core").PartialStrykerOptions} */
export default {
  testRunner: "vitest",
  plugins: [import.meta.resolve("@stryker-mutator/vitest-runner")],
  vitest: { configFile: "test/mutation/vitest.config.ts", related: false },
  // Tables are data: their laws are in test/published and beside each table.
  mutate: (
    process.env.MUTATION_FILES ?? `src-shared/${room}/**/*.ts,!src-shared/**/*Table.ts`
  ).split(","),
  ignorePatterns: ["out", "e2e", "test/mutation/node_modules"],
  concurrency: 1,
  timeoutMS: 20_000,
  timeoutFactor: 3,
  incremental: true,
  incrementalFile: `out/mutation/${room}.incremental.json`,
  tempDirName: "out/mutation/sandbox",
  reporters: ["clear-text", "json", "progress-append-only"],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: `out/mutation/${room}.json` },
  thresholds: { high: 90, low: 85, break: null },
};
