import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type LogEntry, type LogLine, writeLogLine } from "../../../src-shared/practice/logLine.ts";
import { readLog } from "../../../src-shared/practice/readLog.ts";
import { loggedRound } from "../../laws/loggedRound.ts";

const played = (entry: LogEntry): LogLine => ({ version: 1, kind: "round", ...entry });
const gone = (id: string): LogLine => ({ version: 1, kind: "deleted", id });
const back = (id: string): LogLine => ({ version: 1, kind: "restored", id });
const fileOf = (...lines: readonly LogLine[]): string =>
  lines.map((line) => `${writeLogLine(line)}\n`).join("");

const one = loggedRound("one");
const two = loggedRound("two", { item: { kind: "passage", firstBar: 4, lastBar: 7 }, shift: null });
const three = loggedRound("three", { item: { kind: "exercise", name: "pairs in D" } }, null);

describe("a practice log", () => {
  test("is read back as it was written", () => {
    expect(readLog(fileOf(...[one, two, three].map(played)))).toEqual({
      entries: [one, two, three],
      passedOver: [],
    });
  });

  test("is without what was deleted, and with what was brought back", () => {
    const text = fileOf(played(one), played(two), gone("one"), gone("two"), back("two"));
    expect(readLog(text).entries).toEqual([two]);
  });

  test("has a round that was sent twice only once", () => {
    expect(readLog(fileOf(played(one), played(two), played(one))).entries).toEqual([one, two]);
  });

  test.each([
    ["a line cut short", writeLogLine(played(two)).slice(0, 90), "damaged"],
    ["another program's words", "hello", "damaged"],
    ["JSON of something else", '{"version":1}', "damaged"],
    ["a tempo of nothing", writeLogLine(played(two)).replace('"tempo":92', '"tempo":0'), "damaged"],
    ["a later version's line", '{"version":2,"kind":"stroll","id":"x"}', "newer"],
  ] as const)("tells %s, and reads what stands before and after it", (_what, line, why) => {
    const text = `${fileOf(played(one))}${line}\n${fileOf(played(three))}`;
    expect(readLog(text)).toEqual({ entries: [one, three], passedOver: [{ line: 2, why }] });
  });

  test("can be any text at all", () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.string(), fc.json(), fc.constant(writeLogLine(played(one))))),
        (lines) => {
          const { entries, passedOver } = readLog(lines.join("\n"));
          const known = lines.some((line) => line.includes('"one"'));
          expect(entries.length).toBeLessThanOrEqual(known ? 1 : 0);
          for (const { line } of passedOver) {
            expect(lines.join("\n").split("\n")[line - 1]?.trim()).toMatch(/\S/);
          }
        },
      ),
    );
  });
});
