import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { downloadRuntime, findRuntime, hasDisplay } from "./electronRuntime.mjs";
import { endWithNpm } from "./endWithNpm.mjs";
import { ensureBuilt } from "./ensureBuilt.mjs";
import { ensureDependencies } from "./ensureDependencies.mjs";
import { root } from "./root.mjs";
import { run } from "./run.mjs";

const USAGE = `Usage: npm start                          the window, or the browser where there is none
       npm start -- --browser              the browser
       npm start -- --browser --no-open    only print the address`;

/** The line that desktop/main.ts writes once the window is there. */
const WINDOW_LINE = "Shortslide's window is open.";

/** Serves the screen from this very process, so that a signal ends it and nothing is left over. */
const serve = async (noOpen) => {
  const program = join(root, "out", "main", "local.cjs");
  process.argv = [process.execPath, program, ...(noOpen ? ["--no-open"] : [])];
  await import(pathToFileURL(program).href);
};

/** Opens the window and waits until it is closed. Answers why there never was one, or null. */
const openWindow = async () => {
  if (!hasDisplay()) {
    return "there is no display";
  }
  const runtime = findRuntime() ?? (await downloadRuntime());
  if (runtime === null) {
    return "Electron's runtime is not installed";
  }
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env;
  const { code, output } = await run(runtime, [root], {
    env,
    stdio: ["ignore", "pipe", "inherit"],
    onOutput: (text) => process.stdout.write(text),
  });
  if (code === 0) {
    return null;
  }
  if (output.includes(WINDOW_LINE)) {
    process.exitCode = code;
    return null;
  }
  return `Electron ended before there was a window (exit code ${code})`;
};

const start = async (options) => {
  // Ending it by Ctrl-C, at any step, is what a player does; it is no failure.
  process.exitCode = 0;
  process.exitCode = (await ensureDependencies("inherit")) || (await ensureBuilt());
  if (process.exitCode !== 0) {
    return;
  }
  if (!options.has("--browser")) {
    const reason = await openWindow();
    if (reason === null) {
      return;
    }
    console.error(`The window cannot be shown (${reason}); using the browser instead.`);
  }
  await serve(options.has("--no-open"));
};

const options = new Set(process.argv.slice(2));
const unknown = [...options].filter((option) => !["--browser", "--no-open"].includes(option));
if (unknown.length > 0) {
  const asked = unknown.includes("--help");
  console.error(asked ? USAGE : `There is no option ${unknown.join(" ")}.\n${USAGE}`);
  process.exitCode = asked ? 0 : 2;
} else {
  endWithNpm();
  await start(options);
}
