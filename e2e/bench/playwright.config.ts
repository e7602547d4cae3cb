import type { PlaywrightTestConfig } from "@playwright/test";
import everyday from "../../playwright.config.ts";

/** Figures of the built screen in Chromium, each beside its goal; no test. */
const config: PlaywrightTestConfig = {
  ...everyday,
  testDir: ".",
  testMatch: "*.bench.ts",
  outputDir: "../../test-results/bench",
  reporter: "list",
  // A recording of the screen would be measured too.
  use: { ...everyday.use, trace: "off" },
  retries: 0,
  timeout: 300_000,
};

export default config;
