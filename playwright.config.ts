import { existsSync } from "node:fs";
import type { PlaywrightTestConfig } from "@playwright/test";

/** npm test says which Chromium it found; alone, the usual places are tried, then Playwright's own. */
const chromium = [
  process.env["CHROMIUM_PATH"] ?? "",
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
].find((path) => path !== "" && existsSync(path));

const config: PlaywrightTestConfig = {
  testDir: "e2e",
  outputDir: "test-results/e2e",
  // One picture for every machine: type is bundled.
  snapshotPathTemplate: "{testDir}/likeness/{arg}{ext}",
  fullyParallel: false,
  workers: 1,
  timeout: 60_000,
  // Live sound on a shared machine: a second try is allowed there, and named as flaky.
  retries: process.env["CI"] ? 1 : 0,
  reporter: [["list"], ["json", { outputFile: "test-results/e2e.json" }]],
  use: {
    viewport: { width: 1280, height: 800 },
    trace: "retain-on-failure",
    launchOptions: {
      ...(chromium ? { executablePath: chromium } : {}),
      args: [
        ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
        "--autoplay-policy=no-user-gesture-required",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
      ],
    },
  },
};

export default config;
