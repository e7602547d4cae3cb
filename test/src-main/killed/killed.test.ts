import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdir, readdir, utimes } from "node:fs/promises";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { setTimeout as pause } from "node:timers/promises";
import { build } from "vite";
import { beforeAll, describe, expect, test } from "vitest";
import { makeHost } from "../../../src-main/services/makeHost.ts";
import type { Answer } from "../../../src-shared/host.ts";
import { tempFolder } from "../tempFolder.ts";
import { quietDisk } from "../testDisk.ts";
import { seeded, settingsOf, textOf, titleOf } from "./savedStates.ts";

const KILLS = Number(process.env["KILLS"] ?? 25);
const SEED = Number(process.env["KILL_SEED"] ?? Date.now() % 1_000_000);
/** In this time some saves are over and one is under way. */
const LONGEST_LIFE_MS = 200;

let program: string;
beforeAll(async () => {
  // One file of plain JavaScript, since Node itself reads no TypeScript yet.
  const outDir = join(import.meta.dirname, "..", "..", "..", "test-results", "killed");
  await mkdir(outDir, { recursive: true });
  await build({
    configFile: false,
    logLevel: "error",
    build: {
      ssr: join(import.meta.dirname, "saveUntilKilled.ts"),
      outDir,
      emptyOutDir: false,
      rollupOptions: { output: { format: "es", entryFileNames: "saveUntilKilled.mjs" } },
    },
  });
  program = join(outDir, "saveUntilKilled.mjs");
});

/** What the program said of a song: its last state, and one that may be on the disk too. */
type Told = {
  readonly song: number;
  id: string;
  made: boolean;
  count: number;
  sent: number;
  out: "no" | "perhaps" | { readonly ticket: string };
};

/** Lets the program work and kills it; what it said goes into the table. */
const workAndDie = async (
  home: string,
  table: Map<number, Told>,
  random: () => number,
): Promise<void> => {
  const known = [...table.values()].map(({ id, song, count }) => ({ id, song, count }));
  const seed = Math.floor(random() * 2 ** 31);
  const child = spawn(process.execPath, [program, home, String(seed), JSON.stringify(known)], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  const errors: string[] = [];
  child.stderr.setEncoding("utf8").on("data", (text: string) => errors.push(text));
  const exited = once(child, "exit");
  for await (const line of createInterface(child.stdout)) {
    const [what = "", name = "", more = ""] = line.split(" ");
    const song = Number(name);
    const told: Told = table.get(song) ?? {
      song,
      id: "",
      made: false,
      count: 0,
      sent: 0,
      out: "no",
    };
    switch (what) {
      case "ready":
        void pause(random() * LONGEST_LIFE_MS).then(() => child.kill("SIGKILL"));
        break;
      case "making":
        table.set(song, told);
        break;
      case "made":
        Object.assign(told, { id: more, made: true });
        break;
      case "saving":
        told.sent = Number(more);
        break;
      case "saved":
        told.count = Number(more);
        break;
      case "removing":
        told.out = "perhaps";
        break;
      case "removed":
        told.out = { ticket: more };
        break;
      case "restored":
        told.out = "no";
    }
  }
  const [, signal]: readonly unknown[] = await exited;
  expect(errors.join("")).toBe("");
  expect(signal).toBe("SIGKILL");
};

const value = <T>(answer: Answer<T>): T => {
  expect(answer).toMatchObject({ ok: true });
  if (!answer.ok) {
    throw new Error(answer.problem.says);
  }
  // Nothing was found damaged, and nothing set aside.
  expect(answer.remarks).toBeUndefined();
  return answer.value;
};

/** The tickets of all songs that are out, by the name of the chart that lies there. */
const removedCharts = async (home: string): Promise<ReadonlyMap<string, string>> => {
  const shelf = join(home, "songbook", ".removed");
  await mkdir(shelf, { recursive: true });
  const all = new Map<string, string>();
  for (const ticket of await readdir(shelf)) {
    for (const name of await readdir(join(shelf, ticket))) {
      if (name.endsWith(".txt")) all.set(name.slice(0, -".txt".length), ticket);
    }
  }
  return all;
};

/** Every song is there once and whole: in the state that was said last, or in the one on its way. */
const takeStock = async (home: string, table: Map<number, Told>): Promise<void> => {
  const host = makeHost(home, quietDisk());
  const out = await removedCharts(home);
  const ids = new Map(value(await host.listSongs(null)).map(({ title, id }) => [title, id]));
  for (const told of table.values()) {
    let id = ids.get(titleOf(told.song));
    if (told.out !== "no" && id === undefined) {
      const ticket = typeof told.out === "object" ? told.out.ticket : out.get(told.id);
      ({ id } = value(await host.restoreSong({ ticket: ticket ?? "" })));
    }
    if (!told.made && id === undefined) {
      table.delete(told.song);
      continue;
    }
    const { text, settings } = value(await host.readSong({ id: id ?? "" }));
    // Compared by state: a difference of such long texts would be looked for without end.
    const count = [told.sent, told.count].find((state) => text === textOf(told.song, state));
    const found = count ?? `${text.length} characters, ${text.slice(-20)}`;
    expect(`${told.song}: ${found}`).toMatch(
      new RegExp(`^${told.song}: (${told.count}|${told.sent})$`),
    );
    if (count === undefined) {
      continue;
    }
    expect(settings).toEqual(settingsOf(count));
    Object.assign(told, { id, made: true, count, sent: count, out: "no" });
  }
  const titles = value(await host.listSongs(null)).map(({ title }) => title);
  expect(titles.toSorted()).toEqual(
    [...table.values()].map(({ song }) => titleOf(song)).toSorted(),
  );
};

describe("a program that is killed while it saves", () => {
  test(
    `loses no song and leaves none half-written, ${KILLS} times (seed ${SEED})`,
    async () => {
      const home = await tempFolder();
      const random = seeded(SEED);
      const table = new Map<number, Told>();
      for (let kill = 1; kill <= KILLS; kill += 1) {
        await workAndDie(home, table, random);
        await takeStock(home, table);
      }
      const saves = [...table.values()].reduce((sum, { count }) => sum + count, 0);
      console.info(`${KILLS} kills, seed ${SEED}: ${table.size} songs whole after ${saves} saves`);
      expect(table.size).toBeGreaterThan(0);

      // What the killed saves left lying about is swept away once it is old.
      const book = join(home, "songbook");
      const old = new Date(Date.now() - 2 * 60 * 60_000);
      for (const entry of await readdir(book, { recursive: true })) {
        await utimes(join(book, entry), old, old);
      }
      value(await makeHost(home, quietDisk()).listSongs(null));
      const left = await readdir(book, { recursive: true });
      expect(left.filter((name) => /\.\d+$/.test(name))).toEqual([]);
    },
    KILLS * 20_000 + 60_000,
  );
});
