// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { JamControls } from "../../../../src-renderer/screens/jam/jamControls.svelte.ts";
import {
  jamNow,
  padCalls,
  padCells,
  pageOf,
} from "../../../../src-renderer/screens/jam/jamView.ts";
import { Jam } from "../../../../src-renderer/state/jam.svelte.ts";
import { Player } from "../../../../src-renderer/state/player.svelte.ts";
import { PreferencesState } from "../../../../src-renderer/state/preferences.svelte.ts";
import { calledAt } from "../../../../src-shared/jam/call.ts";
import { firstPreferences } from "../../../../src-shared/settings.ts";
import { tick } from "../../../../src-shared/units.ts";
import { MemoryHost } from "../../state/memoryHost.ts";

const stage = () => {
  const jam = new Jam();
  const player = new Player(() => Promise.reject(new Error("no sound in this test")));
  const preferences = new PreferencesState(
    new MemoryHost().host,
    firstPreferences,
    () => () => undefined,
  );
  player.load(jam.walk.score, []);
  return { jam, player, preferences, controls: new JamControls(jam, player, preferences) };
};
const key = { tonic: "G", mode: "major" } as const;

describe("a figure", () => {
  test("before anything is played calls the first bar, and may be corrected there", async () => {
    const { jam, controls } = stage();
    await controls.act("call1", false);
    await controls.act("call6", true);
    expect(jam.calls).toEqual([
      { bar: 0, call: { degree: { number: 6, accidental: "" }, quality: "m", bass: null } },
    ]);
  });

  test("once something was played calls the bar after the present one", async () => {
    const { jam, player, controls } = stage();
    await controls.act("call1", false);
    jam.reach(3);
    player.seek(tick(3 * 1920 + 5));
    expect([player.bar, controls.nextBar]).toEqual([3, 4]);
    await controls.act("call5", false);
    await controls.act("call5", false);
    expect(calledAt(jam.calls, 4)).toMatchObject({ bar: 4, call: { quality: "7" } });
    await controls.act("takeBack", false);
    expect(jam.calls).toHaveLength(1);
  });

  test("and b are the flat seventh, and 0 is no chord", async () => {
    const { jam, controls } = stage();
    await controls.act("call7", false);
    await controls.act("flat", false);
    expect(jam.walk.timeline.stays[0]?.chord?.name).toBe("F");
    await controls.act("noChord", false);
    expect(jam.walk.timeline.stays[0]?.chord).toBeNull();
  });
});

test("what needs a song does nothing while calling", async () => {
  const { jam, preferences, controls } = stage();
  const before = [jam.calls, jam.setting, preferences.value];
  for (const action of ["loopHere", "barOn", "routes", "why", "jam"] as const) {
    await controls.act(action, false);
  }
  expect([jam.calls, jam.setting, preferences.value]).toEqual(before);
});

test("tempo, count-in, banjo, large type and announcements are switched by their actions", async () => {
  const { jam, preferences, controls } = stage();
  await controls.act("faster", false);
  expect(jam.setting.tempo).toBe(105);
  await controls.act("slower", false);
  await controls.act("slower", false);
  expect(jam.setting.tempo).toBe(95);
  await controls.act("countIn", false);
  expect(jam.countInBars).toBe(2);
  await controls.act("banjo", false);
  await controls.act("announce", false);
  await controls.act("largeType", false);
  expect([preferences.value.mix.banjo.muted, preferences.value.announce]).toEqual([true, true]);
  expect(controls.largeType).toBe(true);
});

test("the first Play shows the caution", async () => {
  const { controls } = stage();
  await controls.act("playPause", false);
  expect(controls.caution.open).toBe(true);
});

describe("the pad", () => {
  test("has every degree with its chord, and no two alike", () => {
    const cells = padCells([], key, 0, 0).flat();
    expect(cells).toHaveLength(24);
    expect(new Set(cells.map(({ symbol }) => symbol)).size).toBe(24);
    expect(cells.filter(({ comes, holds }) => comes || holds)).toEqual([]);
    // 1, 4 and 5 in G are G, C and D; F is its b7 (any harmony book).
    const chordOf = (symbol: string) => cells.find((cell) => cell.symbol === symbol)?.chord;
    expect(["1", "4", "5-7", "6m", "b7"].map(chordOf)).toEqual(["G", "C", "D7", "Em", "F"]);
  });

  test("shows what holds and what comes", () => {
    const { jam } = stage();
    const [major] = padCalls;
    jam.call(major?.[0] ?? null, 0);
    jam.call(major?.[3] ?? null, 2);
    const cells = padCells(jam.calls, key, 1, 2).flat();
    expect(cells.filter(({ holds }) => holds).map(({ symbol }) => symbol)).toEqual(["1"]);
    expect(cells.filter(({ comes }) => comes).map(({ symbol }) => symbol)).toEqual(["4"]);
  });
});

test("bars are shown eight to a page, the present one on it", () => {
  const { jam } = stage();
  jam.callDegree(1, false, 0);
  jam.callDegree(4, false, 10);
  const page = pageOf(jam.calls, key, 9);
  expect(page.map(({ bar }) => bar)).toEqual([9, 10, 11, 12, 13, 14, 15, 16]);
  expect(page.slice(0, 3)).toEqual([
    { bar: 9, chord: "G", called: false, when: "gone" },
    { bar: 10, chord: "G", called: false, when: "now" },
    { bar: 11, chord: "C", called: true, when: "ahead" },
  ]);
});

test("pips count to the next bar line, and without a call the screen asks for one", () => {
  const { jam } = stage();
  jam.callDegree(1, false, 0);
  const at = { state: "playing", bar: 2, beat: 2, placement: 0 } as const;
  expect(jamNow(jam.walk, at)).toMatchObject({
    words: { now: "G", next: null, nextDetail: "Call the next chord" },
    beats: { total: 4, filled: 3, label: "2 beats to the next bar" },
  });
  jam.callDegree(4, false, 3);
  expect(jamNow(jam.walk, at).words).toMatchObject({
    next: "C",
    nextDetail: "Up 5 to the D shape",
  });
  expect(jamNow(jam.walk, { ...at, state: "countingIn", beat: 0 }).beats.label).toBe(
    "Count-in, beat 1",
  );
});
