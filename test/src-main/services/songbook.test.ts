import { mkdir, readdir, readFile, utimes, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeRemarks } from "../../../src-main/services/remarks.ts";
import { makeSongbook, type Songbook } from "../../../src-main/services/songbook.ts";
import type { Answer } from "../../../src-shared/host.ts";
import { newSongSettings, type SongSettings } from "../../../src-shared/settings.ts";
import { contentsOf, tempFolder, visibleContentsOf } from "../tempFolder.ts";
import { fullDisk, quietDisk } from "../testDisk.ts";

const waltz = "Title: Lantern Creek Waltz\nKey: Em\nTime: 3/4\nTempo: 96\n\n| Em | C | G | D |\n";
const reel = "Title: Gate Ten\nKey: D\nTime: 2/2\nTempo: 104\n\n| D | A |\n";
const slower: SongSettings = { ...newSongSettings, playTempo: 72, countInBars: 2 };

const given = <T>(answer: Answer<T>): T => {
  if (!answer.ok) {
    throw new Error(answer.problem.says);
  }
  return answer.value;
};

const openBook = async (): Promise<{ readonly folder: string; readonly book: Songbook }> => {
  const folder = join(await tempFolder(), "songbook");
  return { folder, book: makeSongbook(folder, quietDisk()) };
};

/** What a player sees in the folder. */
const songFilesIn = async (folder: string): Promise<readonly string[]> =>
  (await readdir(folder)).filter((name) => !name.startsWith(".")).toSorted();

describe("a songbook", () => {
  test("is empty before the first song, and makes no folder by being looked at", async () => {
    const { folder, book } = await openBook();
    expect(given(await book.list())).toEqual([]);
    await expect(readdir(folder)).rejects.toThrow("ENOENT");
  });

  test("gives a song back as it was made, to another start too", async () => {
    const { folder, book } = await openBook();
    const made = given(await book.create("Lantern Creek Waltz", waltz, slower));
    expect(made).toEqual({ id: "lantern-creek-waltz", text: waltz, settings: slower });
    const later = makeSongbook(folder, quietDisk());
    expect(given(await later.read("lantern-creek-waltz"))).toEqual(made);
  });

  test("keeps a chart as a plain text file with its settings beside it", async () => {
    const { folder, book } = await openBook();
    await book.create("Gate Ten", reel, slower);
    expect(await readFile(join(folder, "gate-ten.txt"), "utf8")).toBe(reel);
    expect(JSON.parse(await readFile(join(folder, "gate-ten.json"), "utf8"))).toEqual(slower);
    expect(await songFilesIn(folder)).toEqual(["gate-ten.json", "gate-ten.txt"]);
  });

  test("lists songs by title with key, meter, tempo and chords as their charts write them", async () => {
    const { folder, book } = await openBook();
    await book.create("Lantern Creek Waltz", waltz, newSongSettings);
    await book.create("Gate Ten", reel, newSongSettings);
    const written = new Date("2026-03-04T05:06:07Z");
    await utimes(join(folder, "gate-ten.txt"), written, written);
    expect(given(await book.list())).toEqual([
      {
        id: "gate-ten",
        title: "Gate Ten",
        key: "D",
        meter: "2/2",
        tempo: 104,
        chords: ["D", "A"],
        changedMs: written.getTime(),
      },
      expect.objectContaining({ id: "lantern-creek-waltz", key: "Em", meter: "3/4", tempo: 96 }),
    ]);
  });

  test("sorts numbers in titles as numbers", async () => {
    const { book } = await openBook();
    for (const title of ["Gate 10", "gate 9", "Gate 1"]) {
      await book.create(title, `Title: ${title}\n| G |\n`, newSongSettings);
    }
    const titles = given(await book.list()).map((song) => song.title);
    expect(titles).toEqual(["Gate 1", "gate 9", "Gate 10"]);
  });

  test("gives songs of one title different names, however many are made at once", async () => {
    const { book } = await openBook();
    const made = await Promise.all(
      ["| G |\n", "| C |\n", "| D |\n"].map((text) => book.create("Ferry", text, newSongSettings)),
    );
    const ids = made.map((answer) => given(answer).id);
    expect(ids.toSorted()).toEqual(["ferry", "ferry-2", "ferry-3"]);
    for (const answer of made) {
      const { id, text } = given(answer);
      expect(given(await book.read(id)).text).toBe(text);
    }
  });

  test("keeps a title in any script, in the chart", async () => {
    const { book } = await openBook();
    const text = "Title: 橋の下 / Über den Bach 🪕\n| G |\n";
    const { id } = given(await book.create("橋の下 / Über den Bach 🪕", text, newSongSettings));
    expect(id).toBe("uber-den-bach");
    expect(given(await book.list())[0]?.title).toBe("橋の下 / Über den Bach 🪕");
    expect(given(await book.read(id)).text).toBe(text);
  });

  test("writes a changed song over the old one, whole", async () => {
    const { folder, book } = await openBook();
    const { id } = given(await book.create("Gate Ten", reel, newSongSettings));
    const changed = { id, text: `${reel}| G | D |\n`, settings: slower };
    expect(await book.write({ ...changed, before: reel })).toEqual({ ok: true, value: null });
    expect(given(await book.read(id))).toEqual(changed);
    expect(await songFilesIn(folder)).toHaveLength(2);
  });

  test("leaves a chart's date alone when only the settings change", async () => {
    const { folder, book } = await openBook();
    const { id } = given(await book.create("Gate Ten", reel, newSongSettings));
    const written = new Date("2025-11-12T13:14:15Z");
    await utimes(join(folder, `${id}.txt`), written, written);
    await book.write({ id, text: reel, settings: slower, before: reel });
    expect(given(await book.list())[0]?.changedMs).toBe(written.getTime());
    expect(given(await book.read(id)).settings).toEqual(slower);
  });

  test("takes in a chart that the player put into the folder", async () => {
    const { folder, book } = await openBook();
    await mkdir(folder);
    await writeFile(join(folder, "From the pub.txt"), "\uFEFFTitle: Tin Ladle\r\n| A | E |\r\n");
    await writeFile(join(folder, "notes.md"), "not a chart");
    expect(given(await book.list()).map(({ id, title }) => [id, title])).toEqual([
      ["From the pub", "Tin Ladle"],
    ]);
    expect(given(await book.read("From the pub"))).toEqual({
      id: "From the pub",
      text: "Title: Tin Ladle\r\n| A | E |\r\n",
      settings: newSongSettings,
    });
  });
});

describe("a song that someone else has written meanwhile", () => {
  const theirs = `${reel}| Bm |\n`;
  const opened = async () => {
    const { folder, book } = await openBook();
    const { id } = given(await book.create("Gate Ten", reel, newSongSettings));
    await writeFile(join(folder, `${id}.txt`), theirs);
    return { folder, book, id };
  };

  test.each([
    ["a new text", `${reel}| G |\n`],
    ["the old text and new settings", reel],
  ])("is not written over with %s, and nothing is touched", async (_what, text) => {
    const { folder, book, id } = await opened();
    const before = await contentsOf(folder);
    expect(await book.write({ id, text, settings: slower, before: reel })).toMatchObject({
      ok: false,
      problem: { code: "changed", says: "This song was changed elsewhere." },
    });
    expect(await contentsOf(folder)).toEqual(before);
  });

  test("takes new settings where both have come to the same text", async () => {
    const { book, id } = await opened();
    const written = await book.write({ id, text: theirs, settings: slower, before: reel });
    expect(written.ok).toBe(true);
    expect(given(await book.read(id))).toEqual({ id, text: theirs, settings: slower });
  });

  test("in other line breaks only is the same song, and keeps them until its text changes", async () => {
    const { folder, book, id } = await opened();
    const windows = reel.replaceAll("\n", "\r\n");
    await writeFile(join(folder, `${id}.txt`), windows);
    await book.write({ id, text: reel, settings: slower, before: reel });
    expect(given(await book.read(id))).toEqual({ id, text: windows, settings: slower });
    await book.write({ id, text: "| C |\n", settings: slower, before: reel });
    expect(given(await book.read(id)).text).toBe("| C |\n");
  });
});

describe("a song that is not there", () => {
  test.each(["none", "../songbook/gate-ten", "..", "gate-ten.txt/../gate-ten", "CON", ""])(
    "(%j) is answered with not-found by every verb, and nothing is touched",
    async (id) => {
      const { folder, book } = await openBook();
      await book.create("Gate Ten", reel, newSongSettings);
      const before = await contentsOf(folder);
      const answers = [
        await book.read(id),
        await book.write({ id, text: "| C |\n", settings: slower, before: reel }),
        await book.remove(id),
        await book.restore(id),
      ];
      expect(answers.map((answer) => !answer.ok && answer.problem.code)).toEqual([
        "not-found",
        "not-found",
        "not-found",
        "not-found",
      ]);
      expect(await contentsOf(folder)).toEqual(before);
    },
  );

  test("is not brought to life by a late save after its removal", async () => {
    const { book } = await openBook();
    const song = given(await book.create("Gate Ten", reel, newSongSettings));
    await book.remove(song.id);
    expect(await book.write({ ...song, before: reel })).toMatchObject({
      ok: false,
      problem: { code: "not-found" },
    });
    expect(given(await book.list())).toEqual([]);
  });
});

describe("a removed song", () => {
  test("leaves the list and comes back by its ticket as it was", async () => {
    const { book } = await openBook();
    const song = given(await book.create("Gate Ten", reel, slower));
    const { ticket } = given(await book.remove(song.id));
    expect(given(await book.list())).toEqual([]);
    expect(given(await book.restore(ticket))).toEqual(song);
    expect(given(await book.list())).toHaveLength(1);
  });

  test("comes back by its ticket to another start too", async () => {
    const { folder, book } = await openBook();
    const song = given(await book.create("Gate Ten", reel, slower));
    const { ticket } = given(await book.remove(song.id));
    expect(given(await makeSongbook(folder, quietDisk()).restore(ticket))).toEqual(song);
  });

  test("comes back beside a song that has taken its name meanwhile", async () => {
    const { book } = await openBook();
    const song = given(await book.create("Gate Ten", reel, slower));
    const { ticket } = given(await book.remove(song.id));
    const other = given(await book.create("Gate Ten", waltz, newSongSettings));
    const back = given(await book.restore(ticket));
    expect([other.id, back.id]).toEqual(["gate-ten", "gate-ten-2"]);
    expect(back).toEqual({ ...song, id: "gate-ten-2" });
    expect(given(await book.read("gate-ten"))).toEqual(other);
  });

  test("can be brought back once only", async () => {
    const { book } = await openBook();
    const { id } = given(await book.create("Gate Ten", reel, slower));
    const { ticket } = given(await book.remove(id));
    await book.restore(ticket);
    expect(await book.restore(ticket)).toMatchObject({ problem: { code: "not-found" } });
  });

  test("that had no settings file comes back with a new song's settings", async () => {
    const { folder, book } = await openBook();
    await mkdir(folder);
    await writeFile(join(folder, "plain.txt"), reel);
    const { ticket } = given(await book.remove("plain"));
    expect(given(await book.restore(ticket))).toEqual({
      id: "plain",
      text: reel,
      settings: newSongSettings,
    });
  });

  test("whose name is as long as a name may be comes back under a shorter one", async () => {
    const { folder, book } = await openBook();
    const name = "x".repeat(120);
    await mkdir(folder);
    await writeFile(join(folder, `${name}.txt`), reel);
    const { ticket } = given(await book.remove(name));
    await writeFile(join(folder, `${name}.txt`), waltz);
    expect(given(await book.restore(ticket)).id).toBe(`${"x".repeat(118)}-2`);
  });
});

describe("damage", () => {
  test.each(["{", "[]", '{"version":1,"plan":null}'])(
    "to a settings file (%j) costs the settings, which are set aside, and never the chart",
    async (damaged) => {
      const folder = await tempFolder();
      await writeFile(join(folder, "gate-ten.txt"), reel);
      await writeFile(join(folder, "gate-ten.json"), damaged);
      const disk = quietDisk();
      const remarks = makeRemarks();
      const song = given(await makeSongbook(folder, disk, remarks.add).read("gate-ten"));
      expect(song).toEqual({ id: "gate-ten", text: reel, settings: newSongSettings });
      const aside = (await readdir(folder)).filter((name) => name.includes(".damaged-"));
      expect(aside).toHaveLength(1);
      expect(await readFile(join(folder, aside[0] ?? ""), "utf8")).toBe(damaged);
      expect(disk.lines).toHaveLength(1);
      expect(remarks.take()).toEqual([
        {
          code: "damaged",
          says: expect.stringContaining("The song starts with the usual ones."),
          try: expect.stringContaining(aside[0] ?? ""),
        },
      ]);
    },
  );

  test("to a chart that is no UTF-8 text is said, and the file is never written over", async () => {
    const folder = await tempFolder();
    const latin1 = Buffer.from("Title: Caf\xe9\n| G |\n", "latin1");
    await writeFile(join(folder, "old.txt"), latin1);
    const book = makeSongbook(folder, quietDisk());
    expect(await book.read("old")).toMatchObject({ problem: { code: "damaged" } });
    expect(
      await book.write({ id: "old", text: "| C |\n", settings: newSongSettings, before: "" }),
    ).toMatchObject({ problem: { code: "damaged" } });
    expect(await readFile(join(folder, "old.txt"))).toEqual(latin1);
    expect(given(await book.list()).map((song) => song.title)).toEqual(["old"]);
  });

  test("by length is said too: a chart of over a million characters is not opened", async () => {
    const folder = await tempFolder();
    await writeFile(join(folder, "long.txt"), "| G ".repeat(250_001));
    const book = makeSongbook(folder, quietDisk());
    expect(await book.read("long")).toMatchObject({
      problem: { code: "damaged", says: expect.stringContaining("too long") },
    });
    expect(given(await book.list()).map((song) => song.id)).toEqual(["long"]);
  });

  test("to what a chart says is no damage: it is listed and opens as it is", async () => {
    const folder = await tempFolder();
    await writeFile(join(folder, "odd.txt"), "Title: Odd\nKey: ???\n| Q% |\n");
    const book = makeSongbook(folder, quietDisk());
    expect(given(await book.list()).map((song) => song.title)).toEqual(["Odd"]);
    expect(given(await book.read("odd")).text).toBe("Title: Odd\nKey: ???\n| Q% |\n");
  });
});

describe("a full disk", () => {
  test.each([".txt", ".json"])("at the %s file leaves no half-made song", async (ending) => {
    const folder = await tempFolder();
    const book = makeSongbook(folder, fullDisk(ending));
    await expect(book.create("Gate Ten", reel, newSongSettings)).rejects.toThrow("ENOSPC");
    expect(await contentsOf(folder)).toEqual({});
  });

  test("leaves the chart as it was saved before", async () => {
    const folder = await tempFolder();
    const song = given(
      await makeSongbook(folder, quietDisk()).create("Gate Ten", reel, newSongSettings),
    );
    const before = await visibleContentsOf(folder);
    const changed = { ...song, text: "| C |\n", before: song.text };
    await expect(makeSongbook(folder, fullDisk(".txt")).write(changed)).rejects.toThrow("ENOSPC");
    expect(await visibleContentsOf(folder)).toEqual(before);
    expect(given(await makeSongbook(folder, quietDisk()).read(song.id))).toEqual(song);
  });
});
