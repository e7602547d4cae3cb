import { spawn } from "node:child_process";
import { basename } from "node:path";
import { root } from "./root.mjs";

/** What a shell reports for a program that Ctrl-C ended: 128 and SIGINT's number. */
const INTERRUPTED = 130;

/**
 * Runs a program to its end and answers its exit code and what it wrote to a piped stdout or
 * stderr. Ctrl-C and SIGTERM are handed on, and end this program when the other one has ended: with
 * the exit code it has set itself for that case, else as interrupted.
 *
 * @param {string} command
 * @param {readonly string[]} args
 * @param {import("node:child_process").SpawnOptions & { onOutput?: (text: string) => void }} options
 * @returns {Promise<{ code: number, output: string }>}
 */
export const run = (command, args, { onOutput, ...options } = {}) =>
  new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, stdio: "inherit", ...options });
    let interrupted = false;
    let output = "";
    const handOn = (signal) => {
      interrupted = true;
      child.kill(signal);
    };
    process.on("SIGINT", handOn);
    process.on("SIGTERM", handOn);
    for (const stream of [child.stdout, child.stderr]) {
      stream?.setEncoding("utf8").on("data", (text) => {
        output += text;
        onOutput?.(text);
      });
    }
    const done = () => {
      process.off("SIGINT", handOn);
      process.off("SIGTERM", handOn);
    };
    child.once("error", (error) => {
      done();
      reject(error);
    });
    child.once("close", (code) => {
      done();
      if (interrupted) {
        process.exit(process.exitCode ?? INTERRUPTED);
      }
      resolve({ code: code ?? 1, output });
    });
  });

/**
 * Runs npm: the one that started us where there is one, else the one on the path.
 *
 * @param {readonly string[]} args
 * @param {Parameters<typeof run>[2]} options
 */
export const runNpm = (args, options) => {
  const npm = process.env.npm_execpath;
  return npm !== undefined && /^npm.*\.[cm]?js$/.test(basename(npm))
    ? run(process.execPath, [npm, ...args], options)
    : run("npm", args, { ...options, shell: process.platform === "win32" });
};
