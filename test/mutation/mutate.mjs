// npm run mutate -- roll [chart route ...]: how many small mistakes, put into a room of src-shared one
// by one, its tests notice. Takes minutes to hours; a second run tries only what has changed.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src-main/command/root.mjs";
import { run, runNpm } from "../../src-main/command/run.mjs";

const folder = join(root, "test", "mutation");
const stryker = join(folder, "node_modules", "@stryker-mutator", "core", "bin", "stryker.js");
const GOAL = 85;

const known = readdirSync(join(root, "src-shared"), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);
const rooms = process.argv.slice(2);
if (rooms.length === 0 || rooms.some((room) => !known.includes(room))) {
  console.error(`Name one room or more: ${known.join(", ")}.`);
  process.exit(2);
}
if (!existsSync(stryker)) {
  console.error("Fetching the mutation tester (about 60 MB, once).");
  // Without peers: the tests' own Vitest is the one that runs.
  const install = ["ci", "--ignore-scripts", "--legacy-peer-deps", "--no-audit"];
  const { code } = await runNpm(install, { cwd: folder });
  if (code !== 0) {
    process.exit(code);
  }
}

/** Detected mutants in percent, as the tester counts: killed or timed out, of all that compile. */
const scoreOf = (room) => {
  const { files } = JSON.parse(readFileSync(join(root, "out", "mutation", `${room}.json`), "utf8"));
  const all = Object.values(files).flatMap(({ mutants }) => mutants.map(({ status }) => status));
  const counted = all.filter(
    (status) => !["Ignored", "CompileError", "RuntimeError"].includes(status),
  );
  const noticed = counted.filter((status) => status === "Killed" || status === "Timeout");
  return { noticed: noticed.length, of: counted.length };
};

const scores = [];
for (const room of rooms) {
  const env = { ...process.env, MUTATION_ROOM: room };
  const config = join("test", "mutation", "stryker.config.mjs");
  const { code } = await run(process.execPath, [stryker, "run", config], { env });
  if (code !== 0) {
    process.exit(code);
  }
  const { noticed, of } = scoreOf(room);
  scores.push({
    room,
    score: `${((100 * noticed) / of).toFixed(1)} %`,
    noticed,
    of,
    goal: `${GOAL} %`,
  });
}
console.table(scores);
