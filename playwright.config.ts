import { existsSync } from "node:fs";
import { defineConfig } from "@playwright/test";

const systemChromium = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
].find((path) => existsSync(path));

export default defineConfig({
  testDir: "e2e",
  fullyParallel: false,
  workers: 1,
  timeout: 60_000,
  reporter: [["list"], ["json", { outputFile: "test-results/e2e.json" }]],
  use: {
    viewport: { width: 1280, height: 800 },
    trace: "retain-on-failure",
    launchOptions: {
      ...(systemChromium ? { executablePath: systemChromium } : {}),
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
});
