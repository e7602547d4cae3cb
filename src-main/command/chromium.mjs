import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { root } from "./root.mjs";
import { run } from "./run.mjs";

const { env, platform } = process;

const usualPaths = {
  linux: [
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/usr/bin/google-chrome",
    "/usr/bin/google-chrome-stable",
    "/snap/bin/chromium",
  ],
  darwin: [
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  ],
  win32: [env.PROGRAMFILES, env["PROGRAMFILES(X86)"], env.LOCALAPPDATA]
    .filter(Boolean)
    .map((folder) => join(folder, "Google", "Chrome", "Application", "chrome.exe")),
};

/** The browser that Playwright has downloaded for itself, if it has. */
const playwrightsOwn = () => {
  const { chromium } = createRequire(join(root, "package.json"))("playwright");
  return chromium.executablePath();
};

/** A Chromium on this machine; null where there is none. CHROMIUM_PATH goes before all. */
export const findChromium = () => {
  if (env.CHROMIUM_PATH) {
    return existsSync(env.CHROMIUM_PATH) ? env.CHROMIUM_PATH : null;
  }
  const places = [...(usualPaths[platform] ?? []), playwrightsOwn()];
  return places.find((path) => path !== "" && existsSync(path)) ?? null;
};

const HOW_TO_GET_ONE =
  "Install Chromium or Chrome, or run npx playwright install chromium, or set CHROMIUM_PATH to one.";

/** A Chromium, installed where this machine lets us (Debian, as root); null, said why, elsewhere. */
export const ensureChromium = async () => {
  const found = findChromium();
  if (found !== null) {
    return found;
  }
  if (env.CHROMIUM_PATH) {
    console.error(`CHROMIUM_PATH is ${env.CHROMIUM_PATH}, and nothing is there. ${HOW_TO_GET_ONE}`);
    return null;
  }
  if (process.getuid?.() !== 0 || !existsSync("/usr/bin/apt-get")) {
    console.error(`The browser tests need Chromium, and there is none. ${HOW_TO_GET_ONE}`);
    return null;
  }
  console.log("There is no Chromium; installing Debian's (apt-get install chromium).");
  const options = {
    stdio: ["ignore", "inherit", "inherit"],
    env: { ...env, DEBIAN_FRONTEND: "noninteractive" },
  };
  for (const args of [["update"], ["install", "-y", "--no-install-recommends", "chromium"]]) {
    const { code } = await run("apt-get", args, options);
    if (code !== 0) {
      console.error(`apt-get ${args[0]} failed. ${HOW_TO_GET_ONE}`);
      return null;
    }
  }
  return findChromium();
};
