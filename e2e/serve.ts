import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";

const program = join(import.meta.dirname, "..", "out", "main", "local.cjs");
const ADDRESS_LINE = /^Shortslide is at (http:\S+)$/;

/** The built program, serving the screen from a songbook of its own. */
export type Served = {
  /** With the token: what to open first. */
  readonly url: string;
  /** The folder everything is kept in. */
  readonly home: string;
  /** Ends it as Ctrl-C does; resolves to its exit code. A home it made itself is removed. */
  readonly stop: () => Promise<number | null>;
};

/** Starts the built local server, with a fresh home unless one is given. */
export const startServer = async (home?: string): Promise<Served> => {
  if (!existsSync(program)) {
    throw new Error(`${program} is not built; run npm run build first`);
  }
  const folder = home ?? (await mkdtemp(join(tmpdir(), "shortslide-e2e-")));
  const server = spawn(process.execPath, [program, "--no-open"], {
    env: { ...process.env, SHORTSLIDE_HOME: folder },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const exited = once(server, "exit");
  let url: string | undefined;
  for await (const line of createInterface(server.stdout)) {
    url = ADDRESS_LINE.exec(line)?.[1];
    if (url !== undefined) {
      break;
    }
  }
  if (url === undefined) {
    throw new Error("the local server ended without printing its address");
  }
  return {
    url,
    home: folder,
    stop: async () => {
      server.kill("SIGINT");
      const [code]: (number | null)[] = await exited;
      if (home === undefined) {
        await rm(folder, { recursive: true, force: true });
      }
      return code ?? null;
    },
  };
};
