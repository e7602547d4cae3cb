import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./root.mjs";
import { run } from "./run.mjs";

const electronFolder = join(root, "node_modules", "electron");
const DOWNLOAD_MS = 5 * 60_000;

/** Where Electron's own note says that its program lies; null where the runtime is not there. */
export const findRuntime = () => {
  const note = join(electronFolder, "path.txt");
  const override = process.env.ELECTRON_OVERRIDE_DIST_PATH;
  const program = existsSync(note)
    ? readFileSync(note, "utf8")
    : process.platform === "win32"
      ? "electron.exe"
      : "electron";
  const path = join(override || join(electronFolder, "dist"), program);
  return existsSync(path) ? path : null;
};

/** Whether a window can be shown here at all. */
export const hasDisplay = () =>
  process.platform !== "linux" || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);

/** Downloads the runtime by Electron's own installer. Answers the program's path, or null. */
export const downloadRuntime = async () => {
  console.error("Downloading Electron's runtime for the window (about 100 MB, once).");
  const { code, output } = await run(process.execPath, [join(electronFolder, "install.js")], {
    stdio: ["ignore", "inherit", "pipe"],
    timeout: DOWNLOAD_MS,
  });
  if (code !== 0) {
    const [reason = ""] = output.trim().split("\n");
    console.error(`The download failed${reason === "" ? " or took too long" : `: ${reason}`}.`);
  }
  return code === 0 ? findRuntime() : null;
};
