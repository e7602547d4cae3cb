// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { Notices } from "../../../src-renderer/state/notices.svelte.ts";
import { MOST_NOTED, Trouble } from "../../../src-renderer/state/trouble.svelte.ts";
import { HandClock } from "./handClock.ts";
import { diskFull, MemoryHost } from "./memoryHost.ts";

const troubled = () => {
  const memory = new MemoryHost();
  const notices = new Notices(new HandClock().later);
  return { memory, notices, trouble: new Trouble(memory.host, notices) };
};

describe("what goes wrong on the screen", () => {
  test("is said with a way to the log, and is in it with its place", async () => {
    const { memory, notices, trouble } = troubled();
    await trouble.tell(new RangeError("a slip of ours"));
    const [notice] = notices.all;
    expect(notice).toMatchObject({
      kind: "problem",
      says: expect.stringContaining("RangeError: a slip of ours"),
    });
    expect(memory.errors).toEqual([
      { says: "RangeError: a slip of ours", at: expect.stringContaining("trouble.svelte.test") },
    ]);
    if (notice) notices.act(notice);
    await expect.poll(() => trouble.log?.text).toBe("RangeError: a slip of ours");
    expect(trouble.open).toBe(true);
  });

  test("over and over is written down once, and only so many different things are", async () => {
    const { memory, trouble } = troubled();
    const slip = new Error("again");
    for (let time = 0; time < 1_000; time += 1) await trouble.note(slip);
    expect(memory.errors).toHaveLength(1);
    for (let time = 0; time < 1_000; time += 1) await trouble.note(`another ${time}`);
    expect(memory.errors).toHaveLength(MOST_NOTED);
  });

  test("and cannot be written down is said too", async () => {
    const { memory, notices, trouble } = troubled();
    memory.failing = diskFull;
    await trouble.tell("no Error but a text");
    expect(notices.all.map(({ says }) => says)).toEqual([
      expect.stringContaining("no Error but a text"),
      expect.stringContaining("The disk is full."),
    ]);
  });
});
