import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { mkdir, readFile, symlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { build } from "vite";
import { describe, expect, test } from "vitest";
import { makePracticeLog } from "../../../src-main/services/practiceLog.ts";
import { type LogEntry, type LogLine, writeLogLine } from "../../../src-shared/practice/logLine.ts";
import { loggedRound } from "../../laws/loggedRound.ts";
import { tempFolder } from "../tempFolder.ts";

const played = (entry: LogEntry): LogLine => ({ version: 1, kind: "round", ...entry });
const fileIn = (home: string): string => join(home, "practice.jsonl");

describe("the practice log on disk", () => {
  test("is empty where nothing was played yet", async () => {
    const log = makePracticeLog(join(await tempFolder(), "not-made-yet"));
    expect(await log.read()).toEqual({ entries: [], passedOver: [] });
  });

  test("has what was appended, in its order, at another start too", async () => {
    const home = join(await tempFolder(), "not-made-yet");
    const rounds = ["first", "second", "third"].map((id) => loggedRound(id));
    for (const round of rounds) {
      await makePracticeLog(home).append(played(round));
    }
    expect(await makePracticeLog(home).read()).toEqual({ entries: rounds, passedOver: [] });
  });

  test("cut at any byte loses no round but the cut one, and invents none", async () => {
    const home = await tempFolder();
    const log = makePracticeLog(home);
    const rounds = ["first", "second", "third"].map((id) => loggedRound(id));
    for (const round of rounds) {
      await log.append(played(round));
    }
    const whole = await readFile(fileIn(home));
    const ends = rounds.map((_, index) =>
      Buffer.byteLength(
        rounds
          .slice(0, index + 1)
          .map((round) => writeLogLine(played(round)))
          .join("\n"),
      ),
    );
    const later = loggedRound("later", { mark: "not-yet" });
    for (let cut = 0; cut <= whole.length; cut += 1) {
      await writeFile(fileIn(home), whole.subarray(0, cut));
      await log.append(played(later));
      const kept = ends.filter((end) => end <= cut).length;
      const { entries, passedOver } = await log.read();
      expect(entries, `cut at ${cut}`).toEqual([...rounds.slice(0, kept), later]);
      const isCutLine = cut > (kept === 0 ? 0 : (ends[kept - 1] ?? 0) + 1);
      expect(passedOver, `cut at ${cut}`).toEqual(
        isCutLine ? [{ line: kept + 1, why: "damaged" }] : [],
      );
    }
  }, 120_000);

  test("outlives processes killed while they append: all that was said to be safe is there", async () => {
    const home = await tempFolder();
    const outDir = await tempFolder();
    await build({
      configFile: false,
      logLevel: "error",
      build: {
        ssr: join(import.meta.dirname, "appendForever.ts"),
        outDir,
        rolldownOptions: { output: { entryFileNames: "append.mjs" } },
      },
      ssr: { noExternal: true },
    });
    const safe: string[] = [];
    for (const [name, until] of [
      ["a", 3],
      ["b", 17],
      ["c", 40],
      ["d", 8],
    ] as const) {
      const child = spawn(process.execPath, [join(outDir, "append.mjs"), home, name], {
        stdio: ["ignore", "pipe", "inherit"],
      });
      const ended = once(child, "exit");
      let said = 0;
      for await (const id of createInterface(child.stdout)) {
        safe.push(id);
        said += 1;
        if (said === until) {
          child.kill("SIGKILL");
        }
      }
      expect(await ended).toEqual([null, "SIGKILL"]);
    }
    const { entries, passedOver } = await makePracticeLog(home).read();
    const ids = entries.map(({ id }) => id);
    expect(safe.filter((id) => !ids.includes(id))).toEqual([]);
    // At most the one that each was writing when it was killed.
    expect(ids.length - safe.length + passedOver.length).toBeLessThanOrEqual(4);
    expect(entries).toEqual(ids.map((id) => loggedRound(id)));
  }, 120_000);

  test.skipIf(!existsSync("/dev/full"))("says a full disk, as the system says it", async () => {
    const home = await tempFolder();
    await symlink("/dev/full", fileIn(home));
    await expect(makePracticeLog(home).append(played(loggedRound("one")))).rejects.toThrow(
      "ENOSPC",
    );
  });

  test("that cannot be read is not taken for an empty one", async () => {
    const home = await tempFolder();
    await mkdir(fileIn(home));
    await expect(makePracticeLog(home).read()).rejects.toThrow("EISDIR");
  });
});
