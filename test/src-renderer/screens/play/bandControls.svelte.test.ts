// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { playAct } from "../../../../src-renderer/screens/play/playActs.ts";
import { PlayControls } from "../../../../src-renderer/screens/play/playControls.svelte.ts";
import { OpenSong } from "../../../../src-renderer/state/openSong.svelte.ts";
import { Player } from "../../../../src-renderer/state/player.svelte.ts";
import { PreferencesState } from "../../../../src-renderer/state/preferences.svelte.ts";
import type { ActionName } from "../../../../src-shared/control/actionTable.ts";
import { practiceMixes } from "../../../../src-shared/score/band.ts";
import { firstPreferences, newSongSettings } from "../../../../src-shared/settings.ts";
import { MemoryHost } from "../../state/memoryHost.ts";

const neverSaves = () => () => undefined;

const stage = (bars = "| G | C | D | G |") => {
  const { host } = new MemoryHost();
  const text = `Title: Wicket Lane\nKey: G\nTempo: 110\n${bars}\n`;
  const stored = { id: "wicket-lane", text, settings: newSongSettings };
  const song = new OpenSong(host, stored, { later: neverSaves, nowMs: () => 0 });
  const player = new Player(() => Promise.reject(new Error("no sound in this test")));
  const preferences = new PreferencesState(host, firstPreferences, neverSaves);
  const controls = new PlayControls(song, player, preferences);
  const nowhere = () => undefined;
  const act = (action: ActionName) =>
    playAct(action, {
      controls,
      player,
      preferences,
      onJam: nowhere,
      onRehearse: nowhere,
      onRoute: nowhere,
      onSong: nowhere,
    });
  return { song, preferences, controls, act };
};

describe("the practice mix", () => {
  test("goes through all four by one key, and comes round", async () => {
    const { controls, act } = stage();
    const heard = [];
    for (const _ of [...practiceMixes, "once more"]) {
      heard.push(controls.band.practice.mix);
      await act("band");
    }
    expect(heard).toEqual([...practiceMixes, "all"]);
  });

  test("takes the banjo out and back in by its own key, and brings everyone back from the others", async () => {
    const { controls, act } = stage();
    await act("banjo");
    expect(controls.band.practice.mix).toBe("without-banjo");
    await act("banjo");
    expect(controls.band.practice.mix).toBe("all");
    controls.band.setMix("bass-and-click");
    await act("banjo");
    expect(controls.band.practice.mix).toBe("all");
  });

  test("is heard at once, while what is written stays whole", () => {
    const { controls, song } = stage();
    const written = song.walk.score;
    controls.band.setMix("without-banjo");
    expect(controls.band.heard.notes).toEqual([]);
    controls.band.setMix("banjo-only");
    expect(controls.band.heard.hits).toEqual([]);
    expect(controls.band.heard.notes).toHaveLength(written.notes.length);
    expect(song.walk.score).toBe(written);
  });

  test("is undone like any other setting of the song", () => {
    const { controls, song } = stage();
    controls.band.setMix("banjo-only");
    song.undo();
    expect(controls.band.practice.mix).toBe("all");
    song.redo();
    expect(controls.band.practice.mix).toBe("banjo-only");
  });
});

test("silent bars come on top of what is heard, so that each round can have its own", () => {
  const { controls, song } = stage();
  controls.band.setFeel({ human: 0 });
  controls.band.setPractice({ silentBars: { play: 1, rest: 1 } });
  expect(controls.band.silentBars).toEqual({ play: 1, rest: 1 });
  expect(controls.band.heard.notes).toHaveLength(song.walk.score.notes.length);
});

test("a song's feel changes what the band plays and not the route", () => {
  const { controls, song } = stage("| G | G | C | D |");
  const { route, score } = song.walk;
  const bassOf = () => song.walk.score.hits.filter((hit) => hit.part === "bass").length;
  const walking = bassOf();
  controls.band.setFeel({ walkUps: false, fills: false });
  expect(bassOf()).toBeLessThan(walking);
  expect(song.walk.route).toBe(route);
  expect(song.walk.score.notes).toBe(score.notes);
});

test("what is heard is worked out anew only when something of it has changed", () => {
  const { controls, song } = stage();
  const { heard } = controls.band;
  song.change({ countInBars: 2 });
  expect(controls.band.heard).toBe(heard);
  controls.setLoop({ firstBar: 1, lastBar: 2 });
  expect(controls.band.heard).toBe(heard);
  controls.band.setFeel({ bounce: 0.5 });
  expect(controls.band.heard).not.toBe(heard);
});

test("a part's level keeps its other values", () => {
  const { controls, preferences } = stage();
  controls.band.setLevel("bass", { volume: 0.35, muted: false, solo: true, pan: -0.4 });
  expect(preferences.value.mix.bass).toEqual({ volume: 0.35, muted: false, solo: true, pan: -0.4 });
  expect(preferences.value.mix.chop).toEqual(firstPreferences.mix.chop);
});
