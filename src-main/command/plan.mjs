import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ensureBuilt } from "./ensureBuilt.mjs";
import { ensureDependencies } from "./ensureDependencies.mjs";
import { root } from "./root.mjs";

// Everything that is not the plan itself goes to stderr, so that a pipe gets the plan alone.
process.exitCode = (await ensureDependencies(2)) || (await ensureBuilt());
if (process.exitCode === 0) {
  // npm runs scripts in the repository; a file is meant from where the player typed its name.
  if (process.env.npm_lifecycle_event === "plan" && process.env.INIT_CWD) {
    process.chdir(process.env.INIT_CWD);
  }
  const program = join(root, "out", "main", "command.cjs");
  process.argv = [process.execPath, program, "plan", ...process.argv.slice(2)];
  await import(pathToFileURL(program).href);
}
