// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { AUTOSAVE_PAUSE_MS } from "../../../src-renderer/state/autosave.svelte.ts";
import { OpenSong } from "../../../src-renderer/state/openSong.svelte.ts";
import { STEP_PAUSE_MS } from "../../../src-renderer/state/songHistory.ts";
import { WALK_PAUSE_MS, WALKED_AT_ONCE } from "../../../src-renderer/state/walkedText.svelte.ts";
import type { Host } from "../../../src-shared/host.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import type { StayPicking } from "../../../src-shared/roll/picking.ts";
import { patternsOf } from "../../../src-shared/roll/rollTable.ts";
import type { Pin } from "../../../src-shared/route/pins.ts";
import { HandClock } from "./handClock.ts";
import { changedElsewhere, diskFull, MemoryHost, storedSong } from "./memoryHost.ts";

const chart = "Title: Millrace\n| G | C |";

const opened = (text = chart, patterns: () => readonly Pattern[] = () => []) => {
  const stored = storedSong("millrace", text);
  const memory = new MemoryHost([stored]);
  const clock = new HandClock();
  return { memory, clock, song: new OpenSong(memory.host, stored, clock, patterns) };
};

/** Types `more` at the end, a character at a time, `pauseMs` apart. */
const type = (song: OpenSong, clock: HandClock, more: string, pauseMs = 120) => {
  for (const character of more) {
    clock.turn(pauseMs);
    song.edit(song.text + character);
  }
};

/** Lets every promise that can settle do so. */
const settled = () => new Promise((done) => setImmediate(done));

describe("what follows from an open song", () => {
  test("a new chord in the text is in the score at once", () => {
    const { song } = opened();
    expect(song.walk.timeline.stays.map((stay) => stay.chord?.name)).toEqual(["G", "C"]);
    song.edit(`${chart} D |`);
    expect(song.walk.timeline.stays.map((stay) => stay.chord?.name)).toEqual(["G", "C", "D"]);
  });

  test("a new count-in does not plan the route again", () => {
    const { song } = opened();
    const before = song.walk;
    song.change({ countInBars: 2 });
    expect(song.settings.countInBars).toBe(2);
    expect(song.walk).toBe(before);
  });

  test("other shapes to choose from plan another route", () => {
    const { song } = opened();
    song.changePlan({ shapes: ["barre"] });
    expect(song.walk.route?.placements.map(({ voicing }) => voicing.shape)).toEqual([
      "barre",
      "barre",
    ]);
  });
});

describe("undo", () => {
  test("typing without a pause is one step", () => {
    const { song, clock } = opened();
    type(song, clock, " D | Em |");
    song.undo();
    expect(song.text).toBe(chart);
    expect(song.canUndo).toBe(false);
  });

  test("a pause in typing begins a new step", () => {
    const { song, clock } = opened();
    type(song, clock, " D |");
    clock.turn(STEP_PAUSE_MS);
    type(song, clock, " Em |");
    song.undo();
    expect(song.text).toBe(`${chart} D |`);
  });

  test("erasing after typing is a step of its own", () => {
    const { song, clock } = opened();
    type(song, clock, " D");
    song.edit(song.text.slice(0, -1));
    song.undo();
    expect(song.text).toBe(`${chart} D`);
  });

  test("redo brings back what undo took, text and settings alike", () => {
    const { song, clock } = opened();
    type(song, clock, " D |");
    song.change({ playTempo: 72 });
    song.undo();
    song.undo();
    expect([song.text, song.settings.playTempo]).toEqual([chart, null]);
    song.redo();
    song.redo();
    expect([song.text, song.settings.playTempo]).toEqual([`${chart} D |`, 72]);
    expect(song.canRedo).toBe(false);
  });

  test("a new edit after undo takes the place of what could be redone", () => {
    const { song, clock } = opened();
    type(song, clock, " D |");
    song.undo();
    song.edit(`${chart} Am |`);
    expect(song.canRedo).toBe(false);
  });

  test("a tempo drawn along a slider is one step", () => {
    const { song, clock } = opened();
    for (const playTempo of [99, 98, 97, 96]) {
      clock.turn(30);
      song.change({ playTempo });
    }
    song.undo();
    expect(song.settings.playTempo).toBe(null);
  });

  test("an edit that changes nothing is no step", () => {
    const { song } = opened();
    song.edit(chart);
    song.change({ loop: null });
    expect(song.canUndo).toBe(false);
  });
});

describe("pins", () => {
  const pinOnC: Pin = {
    kind: "hold",
    bar: 1,
    eighth: 0,
    time: null,
    chord: "C",
    frets: [5, 5, 5, null, null],
  };

  test("go with their bar in the step that moves it, and come back with it", () => {
    const { song } = opened();
    song.changePlan({ pins: [pinOnC] });
    song.edit(chart.replace("| G |", "| Em | Am | G |"));
    expect(song.settings.plan.pins).toEqual([{ ...pinOnC, bar: 3 }]);
    const held = song.walk.route?.placements.find(({ chord: { name } }) => name === "C");
    expect(held?.voicing.frets).toEqual(pinOnC.frets);
    song.undo();
    expect([song.text, song.settings.plan.pins]).toEqual([chart, [pinOnC]]);
    song.redo();
    expect(song.settings.plan.pins).toEqual([{ ...pinOnC, bar: 3 }]);
  });

  test("that went with their bar come back by undo exactly as they were", () => {
    const { song, clock } = opened();
    song.changePlan({ pins: [pinOnC] });
    const { settings } = song;
    for (let end = chart.length - 1; end >= chart.indexOf("C"); end -= 1) {
      clock.turn(90);
      song.edit(chart.slice(0, end));
    }
    expect(song.settings.plan.pins).toEqual([]);
    song.undo();
    expect(song.settings).toBe(settings);
  });

  test("leave the settings alone while the title is edited", () => {
    const { song } = opened();
    song.changePlan({ pins: [pinOnC] });
    const { settings } = song;
    song.edit(chart.replace("Millrace", "Mill Pond"));
    expect(song.settings).toBe(settings);
  });
});

describe("saving", () => {
  test("an edit is written after the pause, not before", async () => {
    const { song, clock, memory } = opened();
    song.edit(`${chart} D |`);
    clock.turn(AUTOSAVE_PAUSE_MS - 1);
    await settled();
    expect([song.saving, memory.written.length]).toEqual(["waiting", 0]);
    clock.turn(1);
    await settled();
    expect(song.saving).toBe("saved");
    expect(memory.songs.get("millrace")?.text).toBe(`${chart} D |`);
  });

  test("leaving writes at once", async () => {
    const { song, memory } = opened();
    song.change({ loop: { firstBar: 0, lastBar: 1 } });
    await song.save();
    expect(memory.songs.get("millrace")?.settings.loop).toEqual({ firstBar: 0, lastBar: 1 });
  });

  test("an edit made while a save is under way is saved after it", async () => {
    const { song, memory } = opened();
    song.edit(`${chart} D |`);
    memory.holdUp();
    const saving = song.save();
    song.edit(`${chart} Em |`);
    expect(song.saving).toBe("saving");
    memory.letThrough();
    await saving;
    expect(memory.written.map(({ text }) => text)).toEqual([`${chart} D |`, `${chart} Em |`]);
    expect(song.saving).toBe("saved");
  });

  test("a save that fails is said to have failed, and the text stays", async () => {
    const { song, memory } = opened();
    memory.failing = diskFull;
    song.edit(`${chart} D |`);
    await song.save();
    expect([song.saving, song.problem, song.text]).toEqual(["failed", diskFull, `${chart} D |`]);
  });

  test("after a failure the next edit tries again", async () => {
    const { song, memory, clock } = opened();
    memory.failing = diskFull;
    song.edit(`${chart} D |`);
    await song.save();
    memory.failing = null;
    song.edit(`${chart} Em |`);
    clock.turn(AUTOSAVE_PAUSE_MS);
    await settled();
    expect([song.saving, song.problem]).toEqual(["saved", null]);
    expect(memory.songs.get("millrace")?.text).toBe(`${chart} Em |`);
  });

  test("after a failure trying again without an edit writes the text that was kept", async () => {
    const { song, memory } = opened();
    memory.failing = diskFull;
    song.edit(`${chart} D |`);
    await song.save();
    memory.failing = null;
    await song.save();
    expect(song.saving).toBe("saved");
    expect(memory.songs.get("millrace")?.text).toBe(`${chart} D |`);
  });

  test("an edit made while a failing save is under way is the one that is kept for the next try", async () => {
    const { song, memory } = opened();
    song.edit(`${chart} D |`);
    memory.holdUp();
    memory.failing = diskFull;
    const saving = song.save();
    song.edit(`${chart} Em |`);
    memory.letThrough();
    await saving;
    memory.failing = null;
    await song.save();
    expect(memory.written.map(({ text }) => text)).toEqual([`${chart} Em |`]);
  });

  test("a host that throws is a failure in words, not a save that goes on for ever", async () => {
    const { memory, clock } = opened();
    const breaking = { ...memory.host, writeSong: () => Promise.reject(new Error("no such verb")) };
    const song = new OpenSong(breaking, storedSong("millrace", chart), clock);
    song.edit(`${chart} D |`);
    await song.save();
    expect(song.saving).toBe("failed");
    expect(song.problem?.says).toContain("no such verb");
  });

  test("undo is saved like any other change", async () => {
    const { song, memory } = opened();
    song.edit(`${chart} D |`);
    await song.save();
    song.undo();
    await song.save();
    expect(memory.songs.get("millrace")?.text).toBe(chart);
  });

  test("a song that is out of the songbook is not written any more", async () => {
    const { song, memory, clock } = opened();
    song.edit(`${chart} D |`);
    song.abandon();
    clock.turn(AUTOSAVE_PAUSE_MS);
    await song.save();
    expect(memory.written).toEqual([]);
  });
});

describe("a song that is changed elsewhere while it is open", () => {
  const theirs = storedSong("millrace", `${chart} Bm |`);

  test("is not written over, and the text stays on the screen", async () => {
    const { song, memory } = opened();
    memory.songs.set("millrace", theirs);
    song.edit(`${chart} D |`);
    await song.save();
    expect([song.conflict, song.text]).toEqual([changedElsewhere, `${chart} D |`]);
    expect(memory.songs.get("millrace")).toEqual(theirs);
  });

  test("is taken as it is there, and undo brings back what was here", async () => {
    const { song, memory } = opened();
    memory.songs.set("millrace", theirs);
    song.edit(`${chart} D |`);
    await song.save();
    expect(await song.takeOther()).toBe(null);
    expect([song.text, song.saving, song.conflict]).toEqual([theirs.text, "saved", null]);
    song.undo();
    await song.save();
    expect([song.text, song.saving]).toEqual([`${chart} D |`, "saved"]);
    expect(memory.songs.get("millrace")?.text).toBe(`${chart} D |`);
  });

  test("stays unsaved where the other cannot be read", async () => {
    const { song, memory } = opened();
    memory.songs.set("millrace", theirs);
    song.edit(`${chart} D |`);
    await song.save();
    memory.failing = diskFull;
    expect(await song.takeOther()).toEqual(diskFull);
    await song.save();
    expect([song.text, song.saving]).toEqual([`${chart} D |`, "failed"]);
  });

  test("saves of one's own, one after the other, are no change elsewhere", async () => {
    const { song, memory } = opened();
    for (const chord of ["D", "Em", "A"]) {
      song.edit(`${chart} ${chord} |`);
      await song.save();
    }
    expect(song.saving).toBe("saved");
    expect(memory.written).toHaveLength(3);
  });

  test("a save whose answer was lost is known again as one's own", async () => {
    const { memory, clock } = opened();
    let lost = true;
    const host: Host = {
      ...memory.host,
      writeSong: async (song) => {
        const answer = await memory.host.writeSong(song);
        if (!lost) return answer;
        lost = false;
        return { ok: false, problem: { code: "unreachable", says: "No answer.", try: "Wait." } };
      },
    };
    const song = new OpenSong(host, storedSong("millrace", chart), clock);
    song.edit(`${chart} D |`);
    await song.save();
    expect(song.saving).toBe("failed");
    song.edit(`${chart} D | Em |`);
    await song.save();
    expect(song.saving).toBe("saved");
    expect(memory.songs.get("millrace")?.text).toBe(`${chart} D | Em |`);
  });
});

describe("the right hand", () => {
  const vampOnC: StayPicking = {
    bar: 1,
    eighth: 0,
    time: null,
    chord: "C",
    manner: { style: "vamp", density: "full" },
  };

  test("plays what the song's picking says, and goes with its bar when the chart is edited", () => {
    const { song } = opened();
    song.change({ picking: { ...song.settings.picking, stays: [vampOnC] } });
    song.edit(chart.replace("| G |", "| Em | Am | G |"));
    expect(song.settings.picking.stays).toEqual([{ ...vampOnC, bar: 3 }]);
    expect(song.walk.slots.map(({ played }) => played.manner.style)).toEqual([
      "forward",
      "forward",
      "forward",
      "vamp",
    ]);
    song.undo();
    expect(song.settings.picking.stays).toEqual([vampOnC]);
  });

  test("takes the player's patterns as soon as they are there", () => {
    let patterns = $state.raw<readonly Pattern[]>([]);
    const { song } = opened(chart, () => patterns);
    const manner = { style: "own:Hopper", density: "full" } as const;
    song.change({ picking: { ...song.settings.picking, song: manner } });
    expect(song.walk.notes.map(({ code }) => code)).toEqual(["pattern-gone"]);
    const [hopper] = patternsOf("backward", "4/4").slice(1);
    patterns = hopper ? [{ ...hopper, name: "Hopper" }] : [];
    expect(song.walk.notes).toEqual([]);
    expect(song.walk.slots[0]?.played.pieces.map(({ name }) => name)).toEqual(["Hopper"]);
  });
});

describe("an earlier version that is brought back", () => {
  test("is one step of undo, is saved, and leaves tempo and loop as they are", async () => {
    const { memory, clock, song } = opened();
    song.change({ playTempo: 63 });
    const mine = song.settings;
    const { plan } = mine;
    song.bringBack({
      text: "Title: Millrace\n| F |",
      settings: { ...mine, playTempo: 117, plan: { ...plan, aim: "travel" } },
    });
    expect(song.text).toBe("Title: Millrace\n| F |");
    expect(song.settings).toEqual({ ...mine, plan: { ...plan, aim: "travel" } });
    clock.turn(AUTOSAVE_PAUSE_MS);
    await settled();
    expect(memory.written.at(-1)?.text).toBe("Title: Millrace\n| F |");
    song.undo();
    expect([song.text, song.settings]).toEqual([chart, mine]);
  });
});

describe("a song of thousands of bars", () => {
  const long = `${chart}\n${"| G | C | D | G |\n".repeat(400)}`;

  test("has each letter at once, and what follows from it when the typing rests", () => {
    expect(long.length).toBeGreaterThan(WALKED_AT_ONCE);
    const { song, clock } = opened(long);
    const before = song.walk;
    type(song, clock, "| Bm", 50);
    expect(song.text).toBe(`${long}| Bm`);
    expect(song.walk).toBe(before);
    clock.turn(WALK_PAUSE_MS);
    expect(song.walk.timeline.stays.at(-1)?.chord?.name).toBe("Bm");
  });

  test("is never behind after an undo", () => {
    const { song, clock } = opened(long);
    const { length } = song.walk.timeline.stays;
    type(song, clock, "| Bm |", 50);
    song.undo();
    expect(song.text).toBe(long);
    expect(song.walk.timeline.stays).toHaveLength(length);
  });
});
