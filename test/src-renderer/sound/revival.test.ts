import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { Revival } from "../../../src-renderer/sound/revival.ts";

/** A context whose sound card is taken away and given back by the test. */
class FakeContext extends EventTarget {
  state: AudioContextState = "running";
  currentTime = 0;
  readonly asked: string[] = [];
  refuses = false;

  async resume(): Promise<void> {
    this.asked.push("resume");
    if (this.refuses) {
      throw new Error("no sound card");
    }
    this.state = "running";
  }

  async suspend(): Promise<void> {
    this.asked.push("suspend");
    this.state = "suspended";
  }
}

const LOOK = 20;

const stage = () => {
  const context = new FakeContext();
  const devices = new EventTarget();
  const said: string[] = [];
  const wish = {
    wanted: true,
    needed: () => wish.wanted,
    recovered: () => said.push("recovered"),
    lost: () => said.push("lost"),
  };
  const revival = new Revival(context, wish, devices);
  /** Time goes by, with the sound card's clock or without it. */
  const pass = async (ms: number, clockMoves: boolean): Promise<void> => {
    for (let gone = 0; gone < ms; gone += LOOK) {
      await vi.advanceTimersByTimeAsync(LOOK);
      context.currentTime += clockMoves ? LOOK / 1000 : 0;
      revival.look();
    }
    await vi.advanceTimersByTimeAsync(0);
  };
  const deviceChange = () => devices.dispatchEvent(new Event("devicechange"));
  return { context, wish, said, revival, pass, deviceChange };
};

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe("a sound card that comes or goes", () => {
  test("changes nothing where the sound goes on", async () => {
    const { context, said, pass, deviceChange } = stage();
    await pass(100, true);
    deviceChange();
    await pass(4000, true);
    expect([context.asked, said]).toEqual([[], []]);
  });

  test("has a clock that stands still restarted at once, and not only after a second", async () => {
    const { context, said, pass, deviceChange } = stage();
    await pass(100, true);
    await pass(400, false);
    expect(context.asked).toEqual([]);
    deviceChange();
    await pass(40, false);
    expect(context.asked).toEqual(["suspend", "resume"]);
    expect(said).toEqual(["recovered"]);
  });

  test("wakes a context that was stopped, and says so where that fails", async () => {
    const { context, said, pass, deviceChange } = stage();
    context.state = "suspended";
    deviceChange();
    await pass(20, true);
    expect([context.asked, said]).toEqual([["resume"], ["recovered"]]);
    context.state = "suspended";
    context.refuses = true;
    deviceChange();
    await pass(20, true);
    expect(said).toEqual(["recovered", "lost"]);
  });

  test("is left alone while no sound is wanted, and after the end", async () => {
    const { context, wish, revival, pass, deviceChange } = stage();
    context.state = "suspended";
    wish.wanted = false;
    deviceChange();
    await pass(20, false);
    wish.wanted = true;
    revival.dispose();
    deviceChange();
    await pass(20, false);
    expect(context.asked).toEqual([]);
  });
});

test("without a word from the system a clock that stands still is restarted after a second", async () => {
  const { context, pass } = stage();
  await pass(100, true);
  await pass(900, false);
  expect(context.asked).toEqual([]);
  await pass(200, false);
  expect(context.asked).toEqual(["suspend", "resume"]);
});
