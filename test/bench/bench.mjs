// npm run bench: every figure, measured in one run, and all of them in one table at its end.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ensureBuilt } from "../../src-main/command/ensureBuilt.mjs";
import { run } from "../../src-main/command/run.mjs";

const folder = mkdtempSync(join(tmpdir(), "shortslide-bench-"));
const file = join(folder, "figures.jsonl");
writeFileSync(file, "");
const env = { ...process.env, BENCH_FIGURES: file };
const vitest = ["node_modules/vitest/vitest.mjs", "run", "--config", "test/bench/vitest.config.ts"];
const playwright = [
  "node_modules/@playwright/test/cli.js",
  "test",
  "-c",
  "e2e/bench/playwright.config.ts",
];

const codes = [];
try {
  codes.push((await run(process.execPath, vitest, { env })).code);
  codes.push(await ensureBuilt());
  codes.push((await run(process.execPath, playwright, { env })).code);
  const table = [...vitest, "table"];
  codes.push((await run(process.execPath, table, { env: { ...env, BENCH_TABLE: "1" } })).code);
} finally {
  rmSync(folder, { recursive: true });
}
process.exitCode = codes.find((code) => code !== 0) ?? 0;
