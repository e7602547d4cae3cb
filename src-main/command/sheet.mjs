import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ensureBuilt } from "./ensureBuilt.mjs";
import { ensureDependencies } from "./ensureDependencies.mjs";
import { root } from "./root.mjs";

// Everything that is not the file itself goes to stderr, so that a pipe gets the file alone.
process.exitCode = (await ensureDependencies(2)) || (await ensureBuilt());
if (process.exitCode === 0) {
  // npm runs scripts in the repository; a file is meant from where the player typed its name.
  if (process.env.npm_lifecycle_event === "sheet" && process.env.INIT_CWD) {
    process.chdir(process.env.INIT_CWD);
  }
  const program = join(root, "out", "main", "command.cjs");
  process.argv = [process.execPath, program, "sheet", ...process.argv.slice(2)];
  await import(pathToFileURL(program).href);
}
