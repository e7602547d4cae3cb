import type { PlaywrightTestConfig } from "@playwright/test";
import everyday from "../../playwright.config.ts";

/** `npm run pictures`: takes the README's pictures anew. */
const config: PlaywrightTestConfig = {
  ...everyday,
  testDir: ".",
  testMatch: "*.picture.ts",
  outputDir: "../../test-results/pictures",
  reporter: "list",
};

export default config;
