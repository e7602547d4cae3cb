import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { cp, mkdir, symlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { tempFolder } from "../tempFolder.ts";

const root = join(import.meta.dirname, "..", "..", "..");

/** What a launcher needs of the repository; the screen is a small one of its own. */
const needed = [
  "src-main",
  "src-shared",
  "electron.vite.config.ts",
  "svelte.config.js",
  "tsconfig.base.json",
  "package.json",
  "package-lock.json",
];

/** A copy of the repository with nothing built and a screen of one line. */
export const copyRepository = async (): Promise<string> => {
  const copy = join(await tempFolder(), "shortslide");
  await mkdir(join(copy, "src-renderer"), { recursive: true });
  for (const name of needed) {
    await cp(join(root, name), join(copy, name), { recursive: true });
  }
  await writeFile(
    join(copy, "src-renderer", "index.html"),
    '<!doctype html><title>small</title><script type="module" src="./main.ts"></script>',
  );
  await writeFile(join(copy, "src-renderer", "main.ts"), 'document.title = "small screen";');
  return copy;
};

/** Gives a copy the packages that are installed here. */
export const linkPackages = (copy: string): Promise<void> =>
  symlink(join(root, "node_modules"), join(copy, "node_modules"), "junction");

/** A program under way, with what it has said so far. */
export type Running = {
  readonly child: ChildProcess;
  readonly said: { stdout: string; stderr: string };
  /** Resolves to the first match in what it says on stdout; rejects when it ends without one. */
  readonly says: (pattern: RegExp) => Promise<RegExpExecArray>;
  /** Resolves to its exit code. */
  readonly ended: Promise<number | null>;
};

/** Starts one of a copy's launchers as a shell would, away from any display. */
export const launch = (
  copy: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Running => {
  const { DISPLAY: _x, WAYLAND_DISPLAY: _w, npm_execpath: _n, ...rest } = process.env;
  const child = spawn(process.execPath, args, {
    cwd: copy,
    env: { ...rest, SHORTSLIDE_HOME: join(copy, "home"), ...env },
    stdio: ["ignore", "pipe", "pipe"],
  });
  onTestFinished(() => void child.kill("SIGKILL"));
  const said = { stdout: "", stderr: "" };
  for (const name of ["stdout", "stderr"] as const) {
    child[name].setEncoding("utf8").on("data", (text: string) => {
      said[name] += text;
    });
  }
  const ended = once(child, "close").then(([code]: (number | null)[]) => code ?? null);
  const says = (pattern: RegExp): Promise<RegExpExecArray> =>
    new Promise((resolve, reject) => {
      const look = (): void => {
        const match = pattern.exec(said.stdout);
        if (match !== null) {
          resolve(match);
        }
      };
      look();
      child.stdout.on("data", look);
      child.once("close", () => reject(new Error(`ended without a word: ${said.stderr}`)));
    });
  return { child, said, says, ended };
};
