// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { Learning } from "../../../../src-renderer/screens/hands/learning.svelte.ts";
import { PreferencesState } from "../../../../src-renderer/state/preferences.svelte.ts";
import { actionFor } from "../../../../src-shared/control/bindings.ts";
import type { Trigger } from "../../../../src-shared/control/trigger.ts";
import { firstPreferences } from "../../../../src-shared/settings.ts";
import { MemoryHost } from "../../state/memoryHost.ts";

const key = (name: string): Trigger => ({ kind: "key", key: name });
const pedal: Trigger = { kind: "control", channel: 1, number: 64 };
const begin = () => {
  const memory = new MemoryHost();
  const preferences = new PreferencesState(memory.host, firstPreferences, () => () => undefined);
  return { memory, preferences, learning: new Learning(preferences) };
};

describe("learning by pressing", () => {
  test("gives a free key or switch to the action that waits, and keeps it", async () => {
    const { memory, preferences, learning } = begin();
    learning.start("stop");
    learning.hear(pedal);
    expect(actionFor(learning.own, pedal)).toBe("stop");
    expect([learning.action, learning.conflict]).toEqual([null, null]);
    expect(learning.says).toBe("MIDI control 64, channel 1 now does “Stop”.");
    await preferences.save();
    expect(memory.preferences.bindings).toEqual([{ trigger: pedal, action: "stop" }]);
  });

  test("asks before it takes a key from another action", () => {
    const { learning } = begin();
    learning.start("stop");
    learning.hear(key("l"));
    expect(learning.conflict).toEqual({ trigger: key("l"), has: "loopHere", wants: "stop" });
    expect(learning.says).toContain("Loop this bar");
    expect(learning.own).toEqual([]);
    learning.settle();
    expect(actionFor(learning.own, key("l"))).toBe("stop");
    expect(learning.conflict).toBeNull();
  });

  test("leaves all as it is where the player does not want to take it", () => {
    const { learning } = begin();
    learning.start("stop");
    learning.hear(key("l"));
    learning.leave();
    learning.settle();
    expect([learning.own, learning.action, learning.conflict]).toEqual([[], null, null]);
  });

  test.each(["Tab", "Shift", "F5", "Dead"])("refuses %s and waits for another key", (name) => {
    const { learning } = begin();
    learning.start("stop");
    learning.hear(key(name));
    expect([learning.own, learning.action]).toEqual([[], "stop"]);
    expect(learning.says).toContain("Press another key.");
  });

  test("says that the action has the key already", () => {
    const { learning } = begin();
    learning.start("stop");
    learning.hear(key("s"));
    expect(learning.says).toBe("S does that already.");
    expect(learning.canUndo).toBe(false);
  });

  test("says what a switch does while no action waits", () => {
    const { learning } = begin();
    learning.hear(pedal);
    expect(learning.says).toBe("MIDI control 64, channel 1: nothing yet.");
    expect(learning.own).toEqual([]);
  });
});

test("every step can be taken back, also the one to the usual keys", () => {
  const { learning } = begin();
  learning.remove(key("l"));
  learning.start("stop");
  learning.hear(pedal);
  const both = learning.own;
  learning.backToUsual();
  expect(learning.own).toEqual([]);
  learning.undo();
  expect(learning.own).toEqual(both);
  learning.undo();
  learning.undo();
  expect([learning.own, learning.canUndo]).toEqual([[], false]);
});
