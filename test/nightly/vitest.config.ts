import type { ViteUserConfig } from "vitest/config";

/** What takes too long for every run: KILL_SEED has an earlier run again. */
const config: ViteUserConfig = {
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["test/src-main/killed/*.test.ts"],
    expect: { requireAssertions: true },
    env: { KILLS: process.env["KILLS"] ?? "500" },
  },
};

export default config;
