// npm run package [-- --linux | --mac | --win]: builds the screen and makes an installer of it with
// electron-builder, from packages of its own (packaging/package-lock.json).
// npm run package -- --dry-run: the same as far as it goes without Electron's runtime, on a stand-in
// for it, and then looks at what was made.
import { existsSync } from "node:fs";
import { join } from "node:path";
import { ensureBuilt } from "../src-main/command/ensureBuilt.mjs";
import { ensureDependencies } from "../src-main/command/ensureDependencies.mjs";
import { root } from "../src-main/command/root.mjs";
import { run, runNpm } from "../src-main/command/run.mjs";
import { lookAtPackage, makeStandIn } from "./dryRun.mjs";

const folder = join(root, "packaging");
const builder = join(folder, "node_modules", "electron-builder", "cli.js");
const args = process.argv.slice(2);
const isDry = args.includes("--dry-run");

/** Goes on where a step has gone well, else ends as it did. */
const must = (code) => {
  if (code !== 0) {
    process.exit(code);
  }
};

must(await ensureDependencies(2));
must(await ensureBuilt());
if (!existsSync(builder)) {
  console.error("Fetching the packager (electron-builder, about 90 MB, once).");
  must((await runNpm(["ci", "--ignore-scripts", "--no-audit"], { cwd: folder })).code);
}
const config = ["--projectDir", root, "--config", join(folder, "builder.json")];
if (isDry) {
  const standIn = await makeStandIn(join(root, "out", "standIn"));
  const dry = ["--linux", "dir", `-c.electronDist=${standIn}`];
  must((await run(process.execPath, [builder, ...config, ...dry])).code);
  must(await lookAtPackage(join(root, "out", "packages", "linux-unpacked")));
} else {
  must((await run(process.execPath, [builder, ...config, ...args])).code);
}
