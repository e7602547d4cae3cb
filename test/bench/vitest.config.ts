import type { ViteUserConfig } from "vitest/config";

/** `npm run bench`: figures, not tests; each is a ratio or an exponent measured in one run. */
const config: ViteUserConfig = {
  test: {
    include: ["test/bench/*.bench.ts"],
    exclude: process.env["BENCH_TABLE"] === undefined ? ["test/bench/table.bench.ts"] : [],
    testTimeout: 600_000,
    hookTimeout: 120_000,
    fileParallelism: false,
    pool: "forks",
    execArgv: ["--expose-gc"],
  },
};

export default config;
