// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { AUTOSAVE_PAUSE_MS } from "../../../src-renderer/state/autosave.svelte.ts";
import { PatternsState } from "../../../src-renderer/state/patterns.svelte.ts";
import type { Pattern, PickFinger } from "../../../src-shared/roll/pattern.ts";
import { HandClock } from "./handClock.ts";
import { diskFull, MemoryHost } from "./memoryHost.ts";

const settled = () => new Promise((done) => setImmediate(done));
const home = { T: 3, I: 2, M: 1 } as const;
const pattern = (name: string, fingers: readonly PickFinger[]): Pattern => ({
  name,
  meter: "4/4",
  strokes: fingers.map((finger) => ({
    picks: [{ finger, on: home[finger] }],
    accent: false,
    damped: false,
  })),
});
const gate = pattern("Tin gate", ["T", "I", "M"]);
const draft = pattern("Low weir", ["T", "I", "I", "M"]);

test("a change is in effect at once, and kept after the pause", async () => {
  const memory = new MemoryHost();
  const clock = new HandClock();
  const patterns = new PatternsState(memory.host, [], clock.later);
  patterns.replace([gate]);
  expect(patterns.value).toEqual([gate]);
  clock.turn(AUTOSAVE_PAUSE_MS);
  await settled();
  expect([memory.patterns, patterns.saving]).toEqual([[gate], "saved"]);
});

test("a pattern that breaks a rule is kept, and no song can use it", async () => {
  const memory = new MemoryHost();
  const patterns = new PatternsState(memory.host, [gate], new HandClock().later);
  patterns.replace([gate, draft]);
  await patterns.save();
  expect(memory.patterns).toEqual([gate, draft]);
  expect(patterns.playable).toEqual([gate]);
});

test("patterns that cannot be kept say so, stay, and go out with the next try", async () => {
  const memory = new MemoryHost();
  memory.failing = diskFull;
  const patterns = new PatternsState(memory.host, [], new HandClock().later);
  patterns.replace([gate]);
  await patterns.save();
  expect([patterns.saving, patterns.problem, patterns.value]).toEqual(["failed", diskFull, [gate]]);
  memory.failing = null;
  await patterns.save();
  expect([patterns.saving, memory.patterns]).toEqual(["saved", [gate]]);
});
