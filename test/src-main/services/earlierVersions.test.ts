import { mkdir, readdir, readFile, truncate, utimes, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeHost, type OpenHost } from "../../../src-main/services/makeHost.ts";
import type { Answer, SongVersionFile } from "../../../src-shared/host.ts";
import { newSongSettings, type SongSettings } from "../../../src-shared/settings.ts";
import { contentsOf, tempFolder } from "../tempFolder.ts";
import { quietDisk } from "../testDisk.ts";

const reel = "Title: Gate Ten\nKey: D\n\n| D | A |\n| G | D |\n";
const inE: SongSettings = {
  ...newSongSettings,
  playTempo: 72,
  plan: { ...newSongSettings.plan, playKey: "E" },
};

const value = <T>(answer: Answer<T>): T => {
  if (!answer.ok) throw new Error(answer.problem.says);
  return answer.value;
};

const opened = async () => {
  const home = await tempFolder();
  const host = makeHost(home, quietDisk());
  const { id } = value(
    await host.createSong({ title: "Gate Ten", text: reel, settings: newSongSettings }),
  );
  const folder = join(home, "songbook");
  return { home, host, id, folder, chart: join(folder, `${id}.txt`) };
};

const save = async (
  host: OpenHost,
  id: string,
  before: string,
  text: string,
  settings: SongSettings = newSongSettings,
): Promise<void> => {
  value(await host.writeSong({ id, text, settings, before }));
};

const versionsOf = async (host: OpenHost, id: string): Promise<readonly SongVersionFile[]> => {
  const all: SongVersionFile[] = [];
  for (const { version } of value(await host.listVersions({ id }))) {
    all.push(value(await host.readVersion({ id, version })));
  }
  return all;
};

describe("earlier versions of a song", () => {
  test("are none at first, then what was there before the first save, with its settings", async () => {
    const { host, id } = await opened();
    expect(value(await host.listVersions({ id }))).toEqual([]);
    await save(host, id, reel, "| C |\n", inE);
    expect(await versionsOf(host, id)).toEqual([
      { savedMs: expect.any(Number), text: reel, settings: newSongSettings },
    ]);
  });

  test("grow by one for a burst of saves, and not at all by tempo and loop", async () => {
    const { host, id } = await opened();
    await save(host, id, reel, "| C |\n");
    await save(host, id, "| C |\n", "| C | G |\n");
    await save(host, id, "| C | G |\n", "| C | G | D |\n");
    await save(host, id, "| C | G | D |\n", "| C | G | D |\n", {
      ...newSongSettings,
      playTempo: 61,
    });
    expect((await versionsOf(host, id)).map(({ text }) => text)).toEqual([reel]);
  });

  test("are those of their song, out of the songbook and back in it", async () => {
    const { host, id } = await opened();
    await save(host, id, reel, "| C |\n");
    const before = await versionsOf(host, id);
    const { ticket } = value(await host.removeSong({ id }));
    const other = value(
      await host.createSong({ title: "Gate Ten", text: "| F |\n", settings: newSongSettings }),
    );
    expect(other.id).toBe(id);
    expect(await versionsOf(host, id)).toEqual([]);
    const back = value(await host.restoreSong({ ticket }));
    expect(await versionsOf(host, back.id)).toEqual(before);
  });

  test.each(["../last", "last", "20260101T000000000Z/../last", "", "..", "nul"])(
    "that are asked for by %j are not found, and nothing is read outside",
    async (version) => {
      const { host, id } = await opened();
      const answer = await host.readVersion({ id, version });
      expect(answer).toMatchObject({ ok: false });
      expect(!answer.ok && ["not-found", "bad-argument"]).toContain(
        !answer.ok && answer.problem.code,
      );
    },
  );
});

describe("a chart that is damaged", () => {
  const damages: readonly (readonly [string, (path: string) => Promise<void>])[] = [
    ["not UTF-8", (path) => writeFile(path, Buffer.from("Title: Caf\xe9\n| G |\n", "latin1"))],
    ["full of NUL bytes", (path) => writeFile(path, Buffer.alloc(reel.length))],
    ["empty", (path) => truncate(path, 0)],
    ["cut off in the middle of a line", (path) => truncate(path, reel.length - 4)],
  ];

  test.each(damages)(
    "(%s) is said, left as it is, and mended from what was saved last",
    async (_what, damage) => {
      const { host, id, folder, chart } = await opened();
      await save(host, id, reel, reel, inE);
      await damage(chart);
      const damaged = await readFile(chart);

      const read = await host.readSong({ id });
      expect(read).toMatchObject({ ok: false, problem: { code: "damaged" } });
      const write = { id, text: "| C |\n", settings: inE, before: reel };
      expect(await host.writeSong(write)).toMatchObject({ problem: { code: "damaged" } });
      expect(await readFile(chart)).toEqual(damaged);

      const mended = await host.mendSong({ id });
      expect(value(mended)).toEqual({ id, text: reel, settings: inE });
      const aside = (await readdir(folder)).filter((name) => name.includes(".damaged-"));
      expect(await readFile(join(folder, aside[0] ?? ""))).toEqual(damaged);
      expect(mended).toMatchObject({
        remarks: [{ code: "damaged", try: expect.stringContaining(aside[0] ?? "") }],
      });
      expect(value(await host.readSong({ id })).text).toBe(reel);
      expect(value(await host.listSongs(null))).toHaveLength(1);
    },
  );

  test("and was never saved here is read as old text files are, letter by letter", async () => {
    const home = await tempFolder();
    const folder = join(home, "songbook");
    await mkdir(folder);
    await writeFile(join(folder, "old.txt"), Buffer.from("Title: Caf\xe9\n| G |\n", "latin1"));
    const host = makeHost(home, quietDisk());
    expect(value(await host.mendSong({ id: "old" })).text).toBe("Title: Café\n| G |\n");
    expect(await readdir(folder)).toContainEqual(expect.stringContaining("old.txt.damaged-"));
  });

  test("is not one that someone edited: a line less, or another text, opens as it is", async () => {
    const { host, id, chart } = await opened();
    for (const text of ["Title: Gate Ten\nKey: D\n\n| D | A |\n", "| Em |\n", "Title: Gate T"]) {
      await writeFile(chart, text);
      const later = new Date(Date.now() + 5_000);
      await utimes(chart, later, later);
      const read = await host.readSong({ id });
      expect(read.ok).toBe(text !== "Title: Gate T");
    }
  });
});

describe("a save that was broken off", () => {
  /** The files as a save leaves them that ended after its note, or after its chart. */
  const brokenOff = async (at: "note" | "chart") => {
    const song = await opened();
    const { host, id, chart, folder } = song;
    const oldSettings = await readFile(join(folder, `${id}.json`));
    const longer = `${reel}| Em | A |\n`;
    await save(host, id, reel, longer, inE);
    const early = new Date(Date.now() - 5_000);
    await writeFile(join(folder, `${id}.json`), oldSettings);
    await utimes(join(folder, `${id}.json`), early, early);
    if (at === "note") {
      await writeFile(chart, reel);
      await utimes(chart, early, early);
    }
    return { ...song, longer };
  };

  test.each(["note", "chart"] as const)(
    "after its %s is brought to its end when the song is opened: chart and settings together",
    async (at) => {
      const { home, id, longer } = await brokenOff(at);
      const answer = await makeHost(home, quietDisk()).readSong({ id });
      expect(answer).toEqual({ ok: true, value: { id, text: longer, settings: inE } });
    },
  );

  test("is not taken up where the chart was written since", async () => {
    const { home, id, chart } = await brokenOff("note");
    const later = new Date(Date.now() + 5_000);
    await utimes(chart, later, later);
    const answer = await makeHost(home, quietDisk()).readSong({ id });
    expect(value(answer).text).toBe(reel);
  });
});

describe("settings that are damaged", () => {
  test("are the last good ones again, and that is remarked once", async () => {
    const { home, host, id, folder } = await opened();
    await save(host, id, reel, reel, inE);
    await writeFile(join(folder, `${id}.json`), '{"version":1,"pl');
    const again = makeHost(home, quietDisk());
    const read = await again.readSong({ id });
    expect(value(read).settings).toEqual(inE);
    expect(read).toMatchObject({
      remarks: [{ says: expect.stringContaining("The last good state is back.") }],
    });
    expect(await again.readSong({ id })).toEqual({ ok: true, value: value(read) });
  });
});

describe("what went wrong", () => {
  test("is written to a log that can be read again, without characters that move a terminal", async () => {
    const { home, host } = await opened();
    await host.noteError({ says: "RangeError: \u001b[2Ja slip", at: "at here\nat there" });
    const { path, text } = value(await makeHost(home, quietDisk()).readErrors(null));
    expect(path).toBe(join(home, "log", "errors.log"));
    expect(text).toMatch(/^\S+Z screen: RangeError: \?\[2Ja slip\n {4}at here\n {4}at there\n$/);
  });

  test("in great number fills two files of bounded size, and the newest is there", async () => {
    const { home, host } = await opened();
    const at = "at a place of some length\n".repeat(200);
    for (let count = 0; count < 300; count += 1) {
      await host.noteError({ says: `slip ${count}`, at });
    }
    const log = await contentsOf(join(home, "log"));
    expect(Object.keys(log)).toHaveLength(2);
    for (const text of Object.values(log)) expect(text.length).toBeLessThanOrEqual(256 * 1024);
    const { text } = value(await host.readErrors(null));
    expect(text).toContain("slip 299");
    expect(text.length).toBeLessThanOrEqual(64 * 1024);
    expect(text).toMatch(/^\S+Z screen: slip|^ {4}at a place/);
  });
});
