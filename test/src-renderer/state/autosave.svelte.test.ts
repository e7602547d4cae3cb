// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import {
  AUTOSAVE_PAUSE_MS,
  Autosave,
  LONGEST_RETRY_MS,
  RETRY_MS,
} from "../../../src-renderer/state/autosave.svelte.ts";
import type { Answer, Problem } from "../../../src-shared/host.ts";
import { HandClock } from "./handClock.ts";
import { changedElsewhere, diskFull } from "./memoryHost.ts";

/** Lets every promise that can settle do so. */
const settle = () => new Promise((done) => setImmediate(done));

const saving = (problem: { now: Problem | null }) => {
  const clock = new HandClock();
  const written: string[] = [];
  const autosave = new Autosave<string>(async (text): Promise<Answer<null>> => {
    if (problem.now) return { ok: false, problem: problem.now };
    written.push(text);
    return { ok: true, value: null };
  }, clock.later);
  return { clock, written, autosave };
};

describe("what could not be saved", () => {
  test("goes out by itself when the disk has room again, and is called unsaved until then", async () => {
    const problem: { now: Problem | null } = { now: diskFull };
    const { clock, written, autosave } = saving(problem);
    autosave.offer("| G |");
    clock.turn(AUTOSAVE_PAUSE_MS);
    await settle();
    expect(autosave.state).toBe("failed");
    clock.turn(RETRY_MS);
    expect(autosave.state).toBe("failed");
    await settle();
    expect(autosave.state).toBe("failed");
    problem.now = null;
    clock.turn(2 * RETRY_MS);
    await settle();
    expect([autosave.state, autosave.problem, written]).toEqual(["saved", null, ["| G |"]]);
  });

  test("is tried less and less often, and at least once a minute", async () => {
    const problem: { now: Problem | null } = { now: diskFull };
    const { clock, written, autosave } = saving(problem);
    autosave.offer("| G |");
    clock.turn(AUTOSAVE_PAUSE_MS);
    for (let turn = 0; turn < 12; turn += 1) {
      await settle();
      clock.turn(LONGEST_RETRY_MS);
    }
    await settle();
    problem.now = null;
    clock.turn(LONGEST_RETRY_MS - 1);
    await settle();
    expect(written).toEqual([]);
    clock.turn(1);
    await settle();
    expect(written).toEqual(["| G |"]);
  });

  test("because another has changed it waits for the player", async () => {
    const problem: { now: Problem | null } = { now: changedElsewhere };
    const { clock, written, autosave } = saving(problem);
    autosave.offer("| G |");
    clock.turn(AUTOSAVE_PAUSE_MS);
    await settle();
    problem.now = null;
    clock.turn(10 * LONGEST_RETRY_MS);
    await settle();
    expect([autosave.state, written]).toEqual(["failed", []]);
  });
});
