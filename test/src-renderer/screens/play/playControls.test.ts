import * as v from "valibot";
import { describe, expect, test } from "vitest";
import { playAct } from "../../../../src-renderer/screens/play/playActs.ts";
import { PlayControls } from "../../../../src-renderer/screens/play/playControls.svelte.ts";
import { OpenSong } from "../../../../src-renderer/state/openSong.svelte.ts";
import { Player } from "../../../../src-renderer/state/player.svelte.ts";
import { PreferencesState } from "../../../../src-renderer/state/preferences.svelte.ts";
import { type ActionName, actionNames } from "../../../../src-shared/control/actionTable.ts";
import type { Host } from "../../../../src-shared/host.ts";
import {
  firstPreferences,
  newSongSettings,
  type SongSettings,
  songSettingsSchema,
} from "../../../../src-shared/settings.ts";
import { tick } from "../../../../src-shared/units.ts";

const noMachine = (): never => {
  throw new Error("this test needs no machine");
};
const host: Host = {
  listSongs: noMachine,
  readSong: noMachine,
  createSong: noMachine,
  writeSong: noMachine,
  removeSong: noMachine,
  restoreSong: noMachine,
  listVersions: noMachine,
  readVersion: noMachine,
  mendSong: noMachine,
  noteError: noMachine,
  readErrors: noMachine,
  listRemoved: noMachine,
  eraseRemoved: noMachine,
  settleSong: noMachine,
  markOpened: noMachine,
  readShelf: noMachine,
  writeShelf: noMachine,
  takeFiles: noMachine,
  readPreferences: noMachine,
  writePreferences: noMachine,
  readPatterns: noMachine,
  writePatterns: noMachine,
  readLog: noMachine,
  appendLog: noMachine,
};

const neverSaves = () => () => undefined;

const stage = (bars: string, settings: Partial<SongSettings> = {}, tempo = "Tempo: 110\n") => {
  const song = new OpenSong(
    host,
    {
      id: "slipway",
      text: `Title: Slipway\nKey: G\n${tempo}${bars}\n`,
      settings: { ...newSongSettings, ...settings },
    },
    { later: neverSaves, nowMs: () => 0 },
  );
  const player = new Player(() => Promise.reject(new Error("no sound in this test")));
  const preferences = new PreferencesState(host, firstPreferences, neverSaves);
  player.load(song.walk.score, song.walk.route?.placements ?? []);
  const controls = new PlayControls(song, player, preferences);
  const gone: string[] = [];
  const act = (action: ActionName) =>
    playAct(action, {
      controls,
      player,
      preferences,
      onJam: () => gone.push("jam"),
      onRehearse: () => gone.push("rehearse"),
      onRoute: (by) => gone.push(`route ${by}`),
      onSong: (by) => gone.push(`song ${by}`),
    });
  return { song, player, preferences, controls, act, gone };
};

describe("tempo", () => {
  test("is the chart's own until the player sets another", () => {
    const { controls, song } = stage("| G | C |");
    expect(controls.tempo.now).toBe(110);
    controls.tempo.set(84);
    expect([controls.tempo.now, song.settings.playTempo]).toEqual([84, 84]);
  });

  test("steps by 5 % of the chart's tempo, down and back up to it", () => {
    const { controls, song } = stage("| G | C |");
    const slower = [1, 2, 3].map(() => {
      controls.tempo.step(-1);
      return controls.tempo.now;
    });
    // 95, 90 and 85 % of 110 are 104.5, 99 and 93.5.
    expect(slower).toEqual([105, 99, 94]);
    for (const _ of slower) controls.tempo.step(1);
    expect(controls.tempo.now).toBe(110);
    expect(song.settings.playTempo).toBeNull();
  });

  test("written with a fraction is kept, and is found again from a step or a whole number", () => {
    const { controls, song } = stage("| G | C |", {}, "Tempo: 120.5\n");
    expect([controls.tempo.now, song.settings.playTempo]).toEqual([120.5, null]);
    controls.tempo.set(100);
    controls.tempo.set(song.walk.song.tempo);
    expect([controls.tempo.now, song.settings.playTempo]).toEqual([120.5, null]);
    controls.tempo.step(-1);
    expect(controls.tempo.now).toBe(114);
    controls.tempo.step(1);
    expect([controls.tempo.now, song.settings.playTempo]).toEqual([120.5, null]);
  });

  test("stays within its range", () => {
    const { controls } = stage("| G | C |");
    controls.tempo.set(9999);
    expect(controls.tempo.now).toBe(320);
    controls.tempo.set(1);
    expect(controls.tempo.now).toBe(30);
  });
});

test("a chart faster than usual can still be played at its own tempo and a fifth above", () => {
  const { controls, song } = stage("Time: 2/2\nTempo: 250\n| G | C |", {}, "");
  expect(song.walk.song.tempo).toBe(250);
  controls.tempo.set(9999);
  expect(controls.tempo.now).toBe(300);
});

describe("tempo in quarters", () => {
  test("is set and shown in whole quarters, and kept in beats of the meter", () => {
    const { controls, song } = stage("Time: 2/2\nTempo: 100\n| G | C |", {}, "");
    controls.tempo.toggleUnit();
    expect(controls.tempo.shown(controls.tempo.now)).toBe(200);
    controls.tempo.setShown(95);
    expect([controls.tempo.now, song.settings.playTempo]).toEqual([47.5, 47.5]);
    controls.tempo.toggleUnit();
    expect(controls.tempo.shown(controls.tempo.now)).toBe(47.5);
  });

  test("reaches 30 and 320 a minute in every meter", () => {
    for (const time of ["4/4", "3/4", "2/4", "2/2", "6/8"]) {
      const { controls, song } = stage(`Time: ${time}\nTempo: 100\n| G | C |`, {}, "");
      controls.tempo.toggleUnit();
      for (const quarters of [30, 320]) {
        controls.tempo.setShown(quarters);
        expect(controls.tempo.shown(controls.tempo.now), time).toBeCloseTo(quarters, 9);
        expect(v.safeParse(songSettingsSchema, song.settings).success, time).toBe(true);
      }
    }
  });
});

describe("the loop", () => {
  test("is made of the bar that is played, and cleared by the same key", async () => {
    const { act, controls, player } = stage("| G | C | D | G |");
    controls.goToBar(2);
    expect(player.bar).toBe(2);
    await act("loopHere");
    expect(controls.loop).toEqual({ firstBar: 2, lastBar: 2 });
    await act("loopHere");
    expect(controls.loop).toBeNull();
  });

  test("starts and ends where the player says, and never ends before it starts", async () => {
    const { act, controls, player } = stage("| G | C | D | G | Em |");
    controls.goToBar(3);
    expect(player.bar).toBe(3);
    await act("loopTo");
    controls.goToBar(1);
    expect(player.bar).toBe(1);
    await act("loopFrom");
    expect(controls.loop).toEqual({ firstBar: 1, lastBar: 3 });
    controls.goToBar(0);
    expect(player.bar).toBe(0);
    await act("loopTo");
    expect(controls.loop).toEqual({ firstBar: 0, lastBar: 0 });
  });

  test("keeps to the bars that there are when the chart has grown shorter", () => {
    const { controls } = stage("| G | C | D |", { loop: { firstBar: 1, lastBar: 9 } });
    expect(controls.loop).toEqual({ firstBar: 1, lastBar: 2 });
    expect(controls.round).toEqual({ start: 1920, end: 5760 });
  });

  test("is none when all its bars are gone", () => {
    const { controls } = stage("| G | C |", { loop: { firstBar: 5, lastBar: 9 } });
    expect(controls.loop).toBeNull();
  });
});

describe("a song without a loop", () => {
  test("starts over at its end where it goes round", () => {
    expect(stage("| G | C | D |").controls.round).toEqual({ start: 0, end: 5760 });
  });

  test("ends where it does not", () => {
    const once = { ...newSongSettings.plan, goesRound: false };
    expect(stage("| G | C | D |", { plan: once }).controls.round).toBeNull();
  });
});

describe("the first Play", () => {
  test("shows the caution, and nothing sounds", async () => {
    const { controls, player, preferences } = stage("| G | C |");
    await controls.playPause();
    expect(controls.caution.open).toBe(true);
    expect([player.state, preferences.value.cautionRead]).toEqual(["stopped", false]);
  });

  test("goes on once the caution is read, and never shows it again", async () => {
    const { controls, player, preferences } = stage("| G | C |");
    await controls.playPause();
    await controls.caution.read();
    expect([controls.caution.open, preferences.value.cautionRead]).toEqual([false, true]);
    expect(player.problem).toContain("no sound in this test");
    await controls.playPause();
    expect(controls.caution.open).toBe(false);
  });

  test("shows nothing for a song without bars", async () => {
    const { controls } = stage("");
    await controls.playPause();
    expect(controls.caution.open).toBe(false);
  });
});

describe("what is shown of the hand", () => {
  test("are other places once they are asked for, and no longer when they are asked for again", () => {
    const { controls } = stage("| G | C |");
    expect(controls.othersShown).toBe(false);
    controls.toggleOthers();
    expect(controls.othersShown).toBe(true);
    controls.toggleOthers();
    expect(controls.othersShown).toBe(false);
  });

  test("are the reasons for the placement that is held when they are asked for", () => {
    const { controls, song, player } = stage("| G | C | D |");
    player.seek(song.walk.timeline.bars[1]?.start ?? tick(0));
    controls.toggleWhy();
    expect(controls.whyOf).toBe(1);
    controls.toggleWhy();
    expect(controls.whyOf).toBeNull();
  });

  test("are no reasons in a silence, and reasons that an edit took away do not stand in the way", () => {
    const { controls, song, player } = stage("| G | N.C. | D |");
    player.seek(song.walk.timeline.bars[1]?.start ?? tick(0));
    controls.toggleWhy();
    expect(controls.whyOf).toBeNull();
    player.seek(song.walk.timeline.bars[2]?.start ?? tick(0));
    controls.toggleWhy();
    expect(controls.whyOf).toBe(1);
    song.edit("Title: Slipway\nKey: G\n| G |\n");
    player.load(song.walk.score, song.walk.route?.placements ?? []);
    controls.toggleWhy();
    expect(controls.whyOf).toBe(0);
  });
});

describe("every action", () => {
  test("does something on Play or is a call, and leaves no other state behind", async () => {
    for (const action of actionNames) {
      const { act, controls, song, player, preferences, gone } = stage("| G | C | D |", {
        loop: { firstBar: 1, lastBar: 1 },
        countInBars: 0,
      });
      player.seek(song.walk.timeline.bars[1]?.start ?? tick(0));
      // The lanes, with room to look anywhere; something else than now is looked at already.
      controls.view.look.attach({ draw: () => undefined, within: (ahead) => ahead });
      controls.view.look.by(10);
      const seen = () =>
        JSON.stringify([
          song.settings,
          preferences.value,
          player.bar,
          player.problem,
          gone,
          [controls.caution.open, controls.routesOpen, controls.keysOpen, controls.largeType],
          [controls.othersShown, controls.whyOf, controls.panels.drawerOpen],
          controls.view.look.ahead,
        ]);
      const before = seen();
      await act(action);
      const isCall = /^call|^flat$|^noChord$|^takeBack$|^mark|^nextPart$/.test(action);
      // Here the loop starts and ends already.
      const idle = ["loopFrom", "loopTo"].includes(action);
      expect([action, seen() === before]).toEqual([action, isCall || idle]);
    }
  });

  test("counts in by none, one, two bars and none again", async () => {
    const { act, song } = stage("| G |", { countInBars: 0 });
    const counted = [];
    for (const _ of [1, 2, 3]) {
      await act("countIn");
      counted.push(song.settings.countInBars);
    }
    expect(counted).toEqual([1, 2, 0]);
  });

  test("clears the loop and nothing else", async () => {
    const { act, controls } = stage("| G | C |", { loop: { firstBar: 1, lastBar: 1 } });
    await act("loopOff");
    expect(controls.loop).toBeNull();
    await act("loopOff");
    expect(controls.loop).toBeNull();
  });
});
