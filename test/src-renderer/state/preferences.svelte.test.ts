// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { AUTOSAVE_PAUSE_MS } from "../../../src-renderer/state/autosave.svelte.ts";
import { PreferencesState } from "../../../src-renderer/state/preferences.svelte.ts";
import { firstPreferences } from "../../../src-shared/settings.ts";
import { HandClock } from "./handClock.ts";
import { diskFull, MemoryHost } from "./memoryHost.ts";

const settled = () => new Promise((done) => setImmediate(done));

test("a change is in effect at once, and kept after the pause", async () => {
  const memory = new MemoryHost();
  const clock = new HandClock();
  const preferences = new PreferencesState(memory.host, firstPreferences, clock.later);
  preferences.change({ theme: "dark" });
  expect(preferences.value.theme).toBe("dark");
  clock.turn(AUTOSAVE_PAUSE_MS);
  await settled();
  expect(memory.preferences).toEqual({ ...firstPreferences, theme: "dark" });
});

test("several changes in a row are written once, all of them", async () => {
  const memory = new MemoryHost();
  const preferences = new PreferencesState(memory.host, firstPreferences, new HandClock().later);
  preferences.change({ theme: "light" });
  preferences.change({ cautionRead: true });
  await preferences.save();
  expect(memory.preferences).toEqual({ ...firstPreferences, theme: "light", cautionRead: true });
});

test("preferences that cannot be kept say so, and stay in effect", async () => {
  const memory = new MemoryHost();
  memory.failing = diskFull;
  const preferences = new PreferencesState(memory.host, firstPreferences, new HandClock().later);
  preferences.change({ theme: "light" });
  await preferences.save();
  expect([preferences.saving, preferences.problem]).toEqual(["failed", diskFull]);
  expect(preferences.value.theme).toBe("light");
});
