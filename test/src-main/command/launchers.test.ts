import { chmod, mkdir, readFile, utimes, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { runInNewContext } from "node:vm";
import { describe, expect, test } from "vitest";
import { BRIDGE_NAME, verbNames } from "../../../src-shared/host.ts";
import { copyRepository, launch, linkPackages, type Running } from "./repository.ts";

const START = "src-main/command/start.mjs";
const PLAN = "src-main/command/plan.mjs";
/** Only there can a machine be without a display, and a script stand in for Electron. */
const onLinux = process.platform === "linux";
const ADDRESS = /^Shortslide is at (http:\/\/127\.0\.0\.1:\d+\/)#token=(\S+)$/m;

const interrupt = async ({ child, ended }: Running): Promise<number | null> => {
  child.kill("SIGINT");
  return ended;
};

/** A runtime that is no Electron: it writes down how it was started, and ends as it is told. */
const fakeRuntime = async (copy: string, lines: readonly string[]): Promise<string> => {
  const folder = join(copy, "runtime");
  await mkdir(folder);
  const program = join(folder, "electron");
  await writeFile(program, ["#!/bin/sh", ...lines, ""].join("\n"));
  await chmod(program, 0o755);
  return folder;
};

describe("npm start", () => {
  test("--browser builds, prints one address, answers there, and Ctrl-C ends it with 0", async () => {
    const copy = await copyRepository();
    await linkPackages(copy);

    const first = launch(copy, [START, "--browser"]);
    const [line, address = ""] = await first.says(ADDRESS);
    const page = await fetch(address);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain("<title>small</title>");
    expect(await interrupt(first)).toBe(0);
    expect(first.said.stdout).toBe(`${line}\n`);
    expect(first.said.stderr).toContain("Building Shortslide.");
    expect(first.said.stderr).toContain("The browser was not opened (");
    expect(first.said.stderr).not.toMatch(/^\s+at /m);

    const second = launch(copy, [START, "--browser", "--no-open"]);
    await second.says(ADDRESS);
    expect(await interrupt(second)).toBe(0);
    expect(second.said.stderr).not.toContain("Building");
    expect(second.said.stderr).not.toContain("not opened");

    const later = new Date(Date.now() + 5_000);
    await utimes(join(copy, "src-renderer", "main.ts"), later, later);
    const third = launch(copy, [START, "--browser", "--no-open"]);
    await third.says(ADDRESS);
    third.child.kill("SIGTERM");
    expect(await third.ended).toBe(0);
    expect(third.said.stderr).toContain("Building Shortslide.");
  });

  test.runIf(onLinux)("without a display says so in one line and serves the browser", async () => {
    const copy = await copyRepository();
    await linkPackages(copy);
    const started = launch(copy, [START]);
    await started.says(ADDRESS);
    expect(await interrupt(started)).toBe(0);
    expect(
      started.said.stderr.match(/^.*there is no display.*using the browser.*$/gm),
    ).toHaveLength(1);
  });

  test.runIf(onLinux)(
    "hands the program to Electron's runtime, and ends when its window is closed",
    async () => {
      const copy = await copyRepository();
      await linkPackages(copy);
      const runtime = await fakeRuntime(copy, [
        `echo "$1 as node: $ELECTRON_RUN_AS_NODE." > "${copy}/asked"`,
        `echo "Shortslide's window is open."`,
      ]);
      const started = launch(copy, [START], {
        DISPLAY: ":7",
        ELECTRON_OVERRIDE_DIST_PATH: runtime,
        ELECTRON_RUN_AS_NODE: "1",
      });
      expect(await started.ended).toBe(0);
      expect(await readFile(join(copy, "asked"), "utf8")).toBe(`${copy} as node: .\n`);
      expect(started.said.stdout).not.toMatch(ADDRESS);
    },
  );

  test.runIf(onLinux)(
    "serves the browser where Electron ends before there is a window, and not where it fails later",
    async () => {
      const copy = await copyRepository();
      await linkPackages(copy);
      const runtime = await fakeRuntime(copy, ["exit 9"]);
      const env = { DISPLAY: ":7", ELECTRON_OVERRIDE_DIST_PATH: runtime };
      const early = launch(copy, [START], env);
      await early.says(ADDRESS);
      expect(early.said.stderr).toContain("Electron ended before there was a window (exit code 9)");
      expect(await interrupt(early)).toBe(0);

      const program = join(runtime, "electron");
      await writeFile(program, `#!/bin/sh\necho "Shortslide's window is open."\nexit 9\n`);
      const late = launch(copy, [START], env);
      expect(await late.ended).toBe(9);
      expect(late.said.stdout).not.toMatch(ADDRESS);
    },
  );

  test.runIf(onLinux)("hands Ctrl-C on to Electron and ends with 0, without a stack", async () => {
    const copy = await copyRepository();
    await linkPackages(copy);
    const runtime = await fakeRuntime(copy, [
      `echo "Shortslide's window is open."`,
      "exec sleep 60",
    ]);
    const started = launch(copy, [START], {
      DISPLAY: ":7",
      ELECTRON_OVERRIDE_DIST_PATH: runtime,
    });
    await started.says(/window is open/);
    expect(await interrupt(started)).toBe(0);
    expect(started.said.stderr).not.toMatch(/^\s+at /m);
  });

  test.runIf(onLinux)("leaves no server behind when npm alone is told to end", async () => {
    const copy = await copyRepository();
    await linkPackages(copy);
    // As npm does it: a shell in between, which dies of SIGTERM without a word to its child.
    const shell = join(copy, "shell.mjs");
    await writeFile(
      shell,
      `import { spawn } from "node:child_process";
      spawn(process.execPath, ["${START}", "--browser", "--no-open"], { stdio: "inherit" });`,
    );
    const started = launch(copy, [shell], { npm_lifecycle_event: "start" });
    const [, address = ""] = await started.says(ADDRESS);
    started.child.kill("SIGTERM");
    // "close" comes when the last program that could write to stdout has ended.
    await started.ended;
    await expect(fetch(address)).rejects.toThrow("fetch failed");
  });

  test("knows its options and no others", async () => {
    const copy = await copyRepository();
    const wrong = launch(copy, [START, "--fullscreen"]);
    expect(await wrong.ended).toBe(2);
    expect(wrong.said.stderr).toContain("There is no option --fullscreen.");
    const help = launch(copy, [START, "--help"]);
    expect(await help.ended).toBe(0);
    expect(help.said.stderr).toContain("npm start -- --browser");
  });

  test("installs packages first where there are none, and says so", async () => {
    const copy = await copyRepository();
    const npm = join(copy, "npm-cli.js");
    const packages = JSON.stringify(join(import.meta.dirname, "..", "..", "..", "node_modules"));
    await writeFile(
      npm,
      `import { symlinkSync, writeFileSync } from "node:fs";
      writeFileSync("asked", process.argv.slice(2).join(" "));
      symlinkSync(${packages}, "node_modules", "junction");`,
    );
    const started = launch(copy, [START, "--browser", "--no-open"], { npm_execpath: npm });
    await started.says(ADDRESS);
    expect(await interrupt(started)).toBe(0);
    expect(await readFile(join(copy, "asked"), "utf8")).toMatch(/^ci --include=dev/);
    expect(started.said.stderr).toMatch(/^Installing packages \(npm ci\)\./);
  });

  test("ends with npm's exit code where the packages cannot be installed", async () => {
    const copy = await copyRepository();
    const npm = join(copy, "npm-cli.js");
    await writeFile(npm, "process.exitCode = 7;");
    const started = launch(copy, [START, "--browser"], { npm_execpath: npm });
    expect(await started.ended).toBe(7);
    expect(started.said.stderr).toContain("could not be installed");
  });

  test("installs anew where the lockfile asks for another version", async () => {
    const copy = await copyRepository();
    await linkPackages(copy);
    const lockfile = join(copy, "package-lock.json");
    const lock = JSON.parse(await readFile(lockfile, "utf8"));
    lock.packages["node_modules/valibot"].version = "0.0.1";
    await writeFile(lockfile, JSON.stringify(lock));
    const npm = join(copy, "npm-cli.js");
    await writeFile(npm, "process.exitCode = 7;");
    const started = launch(copy, [START, "--browser"], { npm_execpath: npm });
    expect(await started.ended).toBe(7);
  });

  test("shows the builder's words and its exit code where the build fails", async () => {
    const copy = await copyRepository();
    await linkPackages(copy);
    await writeFile(join(copy, "src-renderer", "main.ts"), 'import "./not-there.ts";');
    const started = launch(copy, [START, "--browser"]);
    expect(await started.ended).toBe(1);
    expect(started.said.stderr).toContain("not-there.ts");
    expect(started.said.stderr).toContain("The build failed");
  });
});

describe("npm run plan", () => {
  test("hands its arguments and exit code through, with nothing of its own on stdout", async () => {
    const copy = await copyRepository();
    await linkPackages(copy);
    await writeFile(
      join(copy, "src-main", "command", "main.ts"),
      "process.stdout.write(JSON.stringify(process.argv.slice(2))); process.exitCode = 4;",
    );
    const planned = launch(copy, [PLAN, "a chart.txt", "--key", "A"]);
    expect(await planned.ended).toBe(4);
    expect(JSON.parse(planned.said.stdout)).toEqual(["plan", "a chart.txt", "--key", "A"]);
    expect(planned.said.stderr).toContain("Building Shortslide.");
  });

  test("means a file from where the player typed its name", async () => {
    const copy = await copyRepository();
    await linkPackages(copy);
    await writeFile(
      join(copy, "src-main", "command", "main.ts"),
      "process.stdout.write(process.cwd());",
    );
    const folder = join(copy, "charts");
    await mkdir(folder);
    const env = { npm_lifecycle_event: "plan", INIT_CWD: folder };
    const planned = launch(copy, [PLAN, "chart.txt"], env);
    expect(await planned.ended).toBe(0);
    expect(planned.said.stdout).toBe(folder);
  });
});

describe("the built program", () => {
  test("has a preload that a sandboxed window can load: one file, with electron and nothing of Node", async () => {
    const copy = await copyRepository();
    await linkPackages(copy);
    await launch(copy, [PLAN]).ended;
    const code = await readFile(join(copy, "out", "preload", "preload.cjs"), "utf8");
    const required: string[] = [];
    const exposed = new Map<string, object>();
    // A fresh context has the language's own globals only; a sandboxed preload has a few more.
    runInNewContext(code, {
      require: (id: string) => {
        required.push(id);
        return {
          contextBridge: {
            exposeInMainWorld: (name: string, value: object) => void exposed.set(name, value),
          },
          ipcRenderer: { on: () => undefined },
        };
      },
      exports: {},
      module: { exports: {} },
    });
    expect(required).toEqual(["electron"]);
    expect([...exposed.keys()]).toEqual([BRIDGE_NAME]);
    expect(Object.keys(exposed.get(BRIDGE_NAME) ?? {})).toEqual([...verbNames]);
  });
});
