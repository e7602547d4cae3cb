import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { copyRepository, launch, linkPackages, type Running } from "./repository.ts";

const unitReport = {
  numPassedTests: 31,
  numFailedTests: 0,
  numPendingTests: 2,
  numTodoTests: 1,
};
const e2eReport = { stats: { expected: 7, flaky: 1, unexpected: 0, skipped: 4 } };

/**
 * Stands in for npm, so that the steps take no minutes: it writes down which scripts are asked for,
 * writes the reports that they would write (Playwright clears the folder first), and fails at one.
 */
const npmFailingAt = (script: string): string => `
  import { appendFileSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
  const [, , verb, silent, script, ...rest] = process.argv;
  appendFileSync("asked", [verb, script].join(" ") + "\\n");
  const report = rest.find((option) => option.startsWith("--outputFile.json="))?.split("=")[1];
  if (report !== undefined) {
    mkdirSync("test-results", { recursive: true });
    writeFileSync(report, ${JSON.stringify(JSON.stringify(unitReport))});
  }
  if (script === "e2e") {
    rmSync("test-results", { recursive: true, force: true });
    mkdirSync("test-results");
    writeFileSync("test-results/e2e.json", ${JSON.stringify(JSON.stringify(e2eReport))});
    writeFileSync("chromium", process.env.CHROMIUM_PATH);
  }
  process.exitCode = script === ${JSON.stringify(script)} ? 3 : 0;
`;

const check = async (
  failing: string,
  chromium: string = process.execPath,
): Promise<Running & { readonly copy: string }> => {
  const copy = await copyRepository();
  await linkPackages(copy);
  const npm = join(copy, "npm-cli.js");
  await writeFile(npm, npmFailingAt(failing));
  const env = { npm_execpath: npm, CHROMIUM_PATH: chromium };
  return { ...launch(copy, ["src-main/command/check.mjs"], env), copy };
};

const asked = async (copy: string): Promise<readonly string[]> =>
  (await readFile(join(copy, "asked"), "utf8")).trim().split("\n");

describe("npm test", () => {
  test("takes every step in order and ends with one line that adds up both reports", async () => {
    const { copy, ended, said } = await check("none");
    expect(await ended).toBe(0);
    expect(await asked(copy)).toEqual([
      "run types",
      "run lint",
      "run unit",
      "run build",
      "run e2e",
    ]);
    expect(said.stdout.trimEnd().split("\n").at(-1)).toBe("39 passed, 0 failed, 7 skipped");
  });

  test.each(["types", "lint", "unit", "build", "e2e"])(
    "stops where %s fails, with its exit code and no line that says passed",
    async (script) => {
      const { copy, ended, said } = await check(script);
      expect(await ended).toBe(3);
      expect((await asked(copy)).at(-1)).toBe(`run ${script}`);
      expect(said.stdout).not.toContain("passed");
      expect(said.stderr).toContain("failed (exit code 3)");
    },
  );

  test("tells the browser tests which Chromium to take", async () => {
    const { copy, ended } = await check("none");
    await ended;
    expect(await readFile(join(copy, "chromium"), "utf8")).toBe(process.execPath);
  });

  test("says how to get a Chromium where there is none at CHROMIUM_PATH, and takes no step", async () => {
    const { copy, ended, said } = await check("none", join("nowhere", "chromium"));
    expect(await ended).toBe(1);
    expect(said.stderr).toContain("npx playwright install chromium");
    await expect(asked(copy)).rejects.toThrow("ENOENT");
  });
});
