import { existsSync, readdirSync, statSync, utimesSync } from "node:fs";
import { join } from "node:path";
import { root } from "./root.mjs";
import { run } from "./run.mjs";

const SOURCES = [
  "src-shared",
  "src-main",
  "src-renderer",
  "electron.vite.config.ts",
  "svelte.config.js",
  "package.json",
  "package-lock.json",
];
const BUILT = [
  "out/main/desktop.cjs",
  "out/main/local.cjs",
  "out/main/command.cjs",
  "out/preload/preload.cjs",
  "out/renderer/index.html",
].map((path) => join(root, path));

/** When a file, or anything in a folder, was last changed; a folder changes when a file goes. */
const changedMs = (path) => {
  const own = statSync(path);
  return own.isDirectory()
    ? Math.max(own.mtimeMs, ...readdirSync(path).map((name) => changedMs(join(path, name))))
    : own.mtimeMs;
};

/** Whether everything is built, and nothing has changed since. */
export const buildIsFresh = () => {
  if (!BUILT.every((path) => existsSync(path))) {
    return false;
  }
  const oldest = Math.min(...BUILT.map((path) => statSync(path).mtimeMs));
  return SOURCES.map((path) => join(root, path)).every(
    (path) => !existsSync(path) || changedMs(path) <= oldest,
  );
};

/**
 * Builds where something has changed. The builder's words are shown only where it fails.
 * Answers its exit code.
 */
export const ensureBuilt = async () => {
  if (buildIsFresh()) {
    return 0;
  }
  console.error("Building Shortslide. This takes a few seconds.");
  const started = new Date();
  const builder = join(root, "node_modules", "electron-vite", "bin", "electron-vite.js");
  const { code, output } = await run(process.execPath, [builder, "build"], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  if (code !== 0) {
    console.error(output);
    console.error("The build failed; the builder says why above.");
    return code;
  }
  // Dated to when the build began: what is edited while it runs is newer, and built next time.
  for (const path of BUILT) {
    utimesSync(path, started, started);
  }
  return 0;
};
