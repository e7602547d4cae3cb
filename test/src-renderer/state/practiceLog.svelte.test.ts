// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { PracticeLog } from "../../../src-renderer/state/practiceLog.svelte.ts";
import type { Host, Problem } from "../../../src-shared/host.ts";
import { loggedRound } from "../../laws/loggedRound.ts";
import { diskFull, MemoryHost } from "./memoryHost.ts";

const { song, round } = loggedRound("any");
const numbered = () => {
  let last = 0;
  return () => `n${++last}`;
};
const idsOf = (log: PracticeLog) => log.entries.map(({ id }) => id);
const written = (memory: MemoryHost) => memory.log.map(({ kind, id }) => `${kind} ${id}`);

test("a round is in the log at once and on the disk soon, before the log was ever read", async () => {
  const memory = new MemoryHost();
  const log = new PracticeLog(memory.host, numbered());
  log.keep(song, round);
  expect([idsOf(log), log.reading]).toEqual([["n1"], "not-yet"]);
  await log.save();
  expect([written(memory), log.saving]).toEqual([["round n1"], "saved"]);
});

test("what was played before comes first when the log is read, and nothing twice", async () => {
  const memory = new MemoryHost();
  memory.log = [{ version: 1, kind: "round", ...loggedRound("earlier") }];
  const log = new PracticeLog(memory.host, numbered());
  log.keep(song, round);
  await log.save();
  await log.open();
  await log.open();
  expect([idsOf(log), log.reading]).toEqual([["earlier", "n1"], "read"]);
});

test("a round that is deleted is gone, here and at the next start, until it is brought back", async () => {
  const memory = new MemoryHost();
  memory.log = ["one", "two"].map((id) => ({ version: 1, kind: "round", ...loggedRound(id) }));
  const log = new PracticeLog(memory.host);
  await log.open();
  log.delete("one");
  await log.save();
  const next = new PracticeLog(memory.host);
  await next.open();
  expect([idsOf(log), idsOf(next)]).toEqual([["two"], ["two"]]);
  log.restore("one");
  expect(idsOf(log)).toEqual(["one", "two"]);
});

test("rounds that cannot be written say so, stay, and go out in their order with the next", async () => {
  const memory = new MemoryHost();
  memory.failing = diskFull;
  const log = new PracticeLog(memory.host, numbered());
  log.keep(song, round);
  await log.save();
  log.keep(null, { ...round, item: { kind: "exercise", name: "pairs in D" } });
  await log.save();
  expect([log.saving, log.problem, log.unsaved, idsOf(log)]).toEqual([
    "failed",
    diskFull,
    2,
    ["n1", "n2"],
  ]);
  memory.failing = null;
  log.delete("n1");
  await log.save();
  expect([log.saving, log.problem, log.unsaved]).toEqual(["saved", null, 0]);
  expect(written(memory)).toEqual(["round n1", "round n2", "deleted n1"]);
});

test("a log that cannot be read says why, and is read when one tries again", async () => {
  const memory = new MemoryHost();
  memory.failing = diskFull;
  const log = new PracticeLog(memory.host);
  await log.open();
  expect([log.reading, log.readProblem]).toEqual(["failed", diskFull]);
  memory.failing = null;
  await log.open();
  expect([log.reading, log.readProblem]).toEqual(["read", null]);
});

test("a title that is longer than the log takes is cut", async () => {
  const memory = new MemoryHost();
  const log = new PracticeLog(memory.host);
  log.keep({ id: "long", title: "x".repeat(300) }, round);
  expect(log.entries[0]?.song?.title).toHaveLength(200);
});

test("a round that is refused for what it is holds up no other, and says so", async () => {
  const memory = new MemoryHost();
  const refusal: Problem = { code: "bad-argument", says: "No such stage.", try: "Reload." };
  const host: Host = {
    ...memory.host,
    appendLog: async (line) =>
      line.id === "n1" ? { ok: false, problem: refusal } : memory.host.appendLog(line),
  };
  const log = new PracticeLog(host, numbered());
  log.keep(song, round);
  log.keep(song, round);
  await log.save();
  await log.save();
  expect([written(memory), log.saving, log.problem, log.unsaved]).toEqual([
    ["round n2"],
    "failed",
    refusal,
    1,
  ]);
});
