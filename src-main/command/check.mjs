import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { ensureChromium } from "./chromium.mjs";
import { ensureDependencies } from "./ensureDependencies.mjs";
import { root } from "./root.mjs";
import { runNpm } from "./run.mjs";

const results = join(root, "test-results");
const unitReport = join(results, "unit.json");
const e2eReport = join(results, "e2e.json");

const readReport = (path) => JSON.parse(readFileSync(path, "utf8"));

const countUnit = () => {
  const report = readReport(unitReport);
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests,
    skipped: report.numPendingTests + report.numTodoTests,
  };
};

const countE2e = () => {
  const { stats } = readReport(e2eReport);
  return {
    passed: stats.expected + stats.flaky,
    failed: stats.unexpected,
    skipped: stats.skipped,
  };
};

const reportUnit = ["--reporter=default", "--reporter=json", `--outputFile.json=${unitReport}`];

/**
 * The scripts of package.json that must pass, in order. A report is read as soon as it is written:
 * Playwright may clear the folder before its own run.
 */
const steps = [
  { heading: "Types", args: ["types"] },
  { heading: "Lint and import rules", args: ["lint"] },
  { heading: "Unit tests", args: ["unit", "--", ...reportUnit], count: countUnit },
  { heading: "Build", args: ["build"] },
  { heading: "Browser tests", args: ["e2e"], count: countE2e },
];

const check = async () => {
  const installed = await ensureDependencies("inherit");
  if (installed !== 0) {
    return installed;
  }
  const chromium = await ensureChromium();
  if (chromium === null) {
    return 1;
  }
  // A report of an earlier run must not be counted for this one.
  rmSync(unitReport, { force: true });
  rmSync(e2eReport, { force: true });

  const total = { passed: 0, failed: 0, skipped: 0 };
  for (const { heading, args, count } of steps) {
    console.log(`\n== ${heading} ==`);
    const { code } = await runNpm(["run", "--silent", ...args], {
      stdio: ["ignore", "inherit", "inherit"],
      env: { ...process.env, CHROMIUM_PATH: chromium },
    });
    if (code !== 0) {
      console.error(`\n${heading}: failed (exit code ${code}).`);
      return code;
    }
    const { passed = 0, failed = 0, skipped = 0 } = count?.() ?? {};
    total.passed += passed;
    total.failed += failed;
    total.skipped += skipped;
  }
  console.log(`\n${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`);
  return total.failed === 0 ? 0 : 1;
};

process.exitCode = await check();
