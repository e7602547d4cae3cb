import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeHost } from "../../../src-main/services/makeHost.ts";
import { firstPreferences, newSongSettings } from "../../../src-shared/settings.ts";
import { tempFolder, visibleContentsOf } from "../tempFolder.ts";
import { fullDisk, quietDisk } from "../testDisk.ts";

const song = { title: "Gate Ten", text: "Title: Gate Ten\n| D | A |\n", settings: newSongSettings };

describe("the host", () => {
  test("keeps songs and preferences apart under its home", async () => {
    const home = await tempFolder();
    const host = makeHost(home, quietDisk());
    await host.createSong(song);
    await host.writePreferences(firstPreferences);
    expect(Object.keys(await visibleContentsOf(home)).toSorted()).toEqual(
      ["preferences.json", "songbook/gate-ten.json", "songbook/gate-ten.txt"].map((name) =>
        join(home, name),
      ),
    );
  });

  test("keeps nothing of an argument that the table does not name", async () => {
    const home = await tempFolder();
    const host = makeHost(home, quietDisk());
    await host.writePreferences({ ...firstPreferences, extra: "not ours" });
    expect(Object.values(await visibleContentsOf(home)).join()).not.toContain("not ours");
  });

  test("says a full disk in words, and what was saved before is still there", async () => {
    const home = await tempFolder();
    await makeHost(home, quietDisk()).createSong(song);
    const before = await visibleContentsOf(home);
    const answer = await makeHost(home, fullDisk(".txt")).writeSong({
      id: "gate-ten",
      text: "| C |\n",
      before: song.text,
      settings: newSongSettings,
    });
    expect(answer).toMatchObject({
      ok: false,
      problem: { code: "disk", says: "The disk is full." },
    });
    expect(await visibleContentsOf(home)).toEqual(before);
  });

  test("owns up to a mistake of its own, and tells the terminal where it was", async () => {
    const disk = quietDisk();
    const broken = { ...disk, writeText: () => Promise.reject(new RangeError("a slip of ours")) };
    const host = makeHost(await tempFolder(), broken);
    expect(await host.writePreferences(firstPreferences)).toMatchObject({
      ok: false,
      problem: { code: "bug" },
    });
    expect(disk.lines).toEqual([expect.stringMatching(/RangeError: a slip of ours\n\s+at /)]);
  });

  test("answers calls on one song in the order they are made", async () => {
    const host = makeHost(await tempFolder(), quietDisk());
    const text = "Title: Gate Ten\n| C |\n";
    const saved = { id: "gate-ten", text, settings: newSongSettings, before: song.text };
    const answers = await Promise.all([
      host.createSong(song),
      host.writeSong(saved),
      host.removeSong({ id: "gate-ten" }),
      host.writeSong(saved),
      host.listSongs(null),
    ]);
    expect(answers.map(({ ok }) => ok)).toEqual([true, true, true, false, true]);
    expect(answers[4]).toEqual({ ok: true, value: [] });
  });
});
