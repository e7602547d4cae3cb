import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { type Book, makeBook } from "../../../src-main/services/book.ts";
import { withSetList, withSongs } from "../../../src-shared/book/editSetLists.ts";
import { tagsOf, withTag } from "../../../src-shared/book/editShelf.ts";
import { emptyShelf, type SetList, type Shelf } from "../../../src-shared/book/shelf.ts";
import type { Answer } from "../../../src-shared/host.ts";
import { newSongSettings } from "../../../src-shared/settings.ts";
import { contentsOf, tempFolder } from "../tempFolder.ts";
import { fullDisk, quietDisk } from "../testDisk.ts";

const given = <T>(answer: Answer<T>): T => {
  if (!answer.ok) throw new Error(answer.problem.says);
  return answer.value;
};
const says = (answer: Answer<unknown>): string => (answer.ok ? "" : answer.problem.says);

const evening: SetList = { id: "friday", name: "Friday", goesOn: true, songs: [] };
const chart = (title: string): string => `Title: ${title}\n| G | C |\n`;

/** A book with one song, "ferry", that has a tag and is on a set list. */
const openBook = async (): Promise<{ readonly home: string; readonly book: Book }> => {
  const home = await tempFolder();
  const book = makeBook(home, quietDisk());
  given(await book.create("Ferry", chart("Ferry"), newSongSettings));
  const list = withSongs(evening, [{ id: "ferry", title: "Ferry" }]);
  const shelf = withTag(withSetList(emptyShelf, list), ["ferry"], "slow", true);
  given(await book.shelf.write(shelf));
  return { home, book };
};
const shelfOf = async (book: Book): Promise<Shelf> => given(await book.shelf.read());
const idsIn = (shelf: Shelf): readonly string[] =>
  shelf.setLists.flatMap(({ songs }) => songs.map(({ id }) => id));

describe("the shelf", () => {
  test("is kept as one readable file, to another start too", async () => {
    const { home, book } = await openBook();
    const shelf = await shelfOf(book);
    expect(shelf.revision).toBe(1);
    expect(await shelfOf(makeBook(home, quietDisk()))).toEqual(shelf);
    expect(JSON.parse(await readFile(join(home, "shelf.json"), "utf8"))).toEqual(shelf);
  });

  test("is not written over where it was changed meanwhile", async () => {
    const { home, book } = await openBook();
    const seen = await shelfOf(book);
    given(await makeBook(home, quietDisk()).shelf.write(withTag(seen, ["ferry"], "waltz", true)));
    const late = await book.shelf.write(withTag(seen, ["ferry"], "reel", true));
    expect(late).toMatchObject({ ok: false, problem: { code: "changed" } });
    expect(tagsOf(await shelfOf(book), "ferry")).toEqual(["slow", "waltz"]);
  });

  test("remembers when a song was opened, whatever the screen writes of it", async () => {
    const { book } = await openBook();
    const seen = await shelfOf(book);
    const before = Date.now();
    given(await book.shelf.opened("ferry"));
    given(await book.shelf.write({ ...seen, opened: [] }));
    const [opened] = (await shelfOf(book)).opened;
    expect(opened?.id).toBe("ferry");
    expect(opened?.atMs).toBeGreaterThanOrEqual(before);
  });

  test("that is damaged is set aside and said once, with where it is", async () => {
    const { home, book } = await openBook();
    await writeFile(join(home, "shelf.json"), '{ "version": 1, "tags": ');
    const answer = await book.shelf.read();
    expect(answer).toMatchObject({ ok: false, problem: { code: "damaged" } });
    const aside = (await readdir(home)).find((name) => name.includes("damaged"));
    expect(answer.ok ? "" : answer.problem.try).toContain(aside);
    expect(await shelfOf(book)).toEqual(emptyShelf);
  });

  test("of a later version is refused in words and left as it is, by everything that needs it", async () => {
    const { home, book } = await openBook();
    const path = join(home, "shelf.json");
    await writeFile(path, JSON.stringify({ ...emptyShelf, version: 2, drawers: [] }));
    const before = await contentsOf(home);
    const answers = [
      await book.shelf.read(),
      await book.shelf.write(emptyShelf),
      await book.shelf.opened("ferry"),
      await book.remove("ferry"),
    ];
    for (const answer of answers) expect(says(answer)).toContain("a later Shortslide");
    expect(await contentsOf(home)).toEqual(before);
  });
});

describe("a song that is removed", () => {
  test("stands on the shelf of removed songs by its title, and leaves its tags to no namesake", async () => {
    const { book } = await openBook();
    const { ticket } = given(await book.remove("ferry"));
    expect(given(await book.listRemoved())).toEqual([
      { ticket, title: "Ferry", removedMs: expect.any(Number) },
    ]);
    given(await book.create("Ferry", chart("Ferry"), newSongSettings));
    expect(tagsOf(await shelfOf(book), "ferry")).toEqual([]);
    expect(idsIn(await shelfOf(book))).not.toContain("ferry");
  });

  test("comes back with its tags and to its set lists, also where its name is taken", async () => {
    const { book } = await openBook();
    const { ticket } = given(await book.remove("ferry"));
    given(await book.create("Ferry", chart("Ferry"), newSongSettings));
    expect(given(await book.restore(ticket)).id).toBe("ferry-2");
    const shelf = await shelfOf(book);
    expect([tagsOf(shelf, "ferry"), tagsOf(shelf, "ferry-2")]).toEqual([[], ["slow"]]);
    expect(idsIn(shelf)).toEqual(["ferry-2"]);
    expect(given(await book.listRemoved())).toEqual([]);
  });

  test("can be taken away for good, its files and its tags; the set list keeps the title", async () => {
    const { home, book } = await openBook();
    const { ticket } = given(await book.remove("ferry"));
    given(await book.erase([ticket]));
    expect(given(await book.listRemoved())).toEqual([]);
    expect(Object.keys(await contentsOf(home))).toEqual([join(home, "shelf.json")]);
    const shelf = await shelfOf(book);
    expect(shelf.tags).toEqual([]);
    expect(shelf.setLists[0]?.songs[0]?.title).toBe("Ferry");
    expect(says(await book.restore(ticket))).toContain("nothing left");
  });

  test("stays in the book where the shelf cannot follow because the disk is full", async () => {
    const { home } = await openBook();
    const full = makeBook(home, fullDisk("shelf.json"));
    await expect(full.remove("ferry")).rejects.toThrow("ENOSPC");
    const book = makeBook(home, quietDisk());
    expect(given(await book.read("ferry")).text).toBe(chart("Ferry"));
    expect(given(await book.listRemoved())).toEqual([]);
    expect(tagsOf(await shelfOf(book), "ferry")).toEqual(["slow"]);
  });

  test("is never erased outside its own shelf", async () => {
    const { home, book } = await openBook();
    const before = await contentsOf(home);
    given(await book.erase(["..", "../ferry.txt", ".", "a/b"]));
    expect(await contentsOf(home)).toEqual(before);
  });
});

describe("a song's file", () => {
  const rename = async (book: Book, title: string): Promise<void> => {
    const { settings, text } = given(await book.read("ferry"));
    given(
      await book.write({
        id: "ferry",
        text: chart(title),
        settings: { ...settings, playTempo: 84 },
        before: text,
      }),
    );
  };

  test("keeps its name while its title is typed, and takes the title's when it is let go", async () => {
    const { home, book } = await openBook();
    await rename(book, "Otter Weir");
    expect(await readdir(join(home, "songbook"))).toContain("ferry.txt");
    expect(given(await book.settle("ferry"))).toEqual({ id: "otter-weir" });
    const song = given(await book.read("otter-weir"));
    expect([song.text, song.settings.playTempo]).toEqual([chart("Otter Weir"), 84]);
    expect(
      (await readdir(join(home, "songbook"))).filter((name) => name.includes("ferry")),
    ).toEqual([]);
  });

  test("is followed by its tags and its set lists", async () => {
    const { book } = await openBook();
    await rename(book, "Otter Weir");
    await book.settle("ferry");
    const shelf = await shelfOf(book);
    expect([tagsOf(shelf, "otter-weir"), idsIn(shelf)]).toEqual([["slow"], ["otter-weir"]]);
  });

  test("is still found under the old name by another window, and written there", async () => {
    const { book } = await openBook();
    await rename(book, "Otter Weir");
    await book.settle("ferry");
    const seen = given(await book.read("ferry"));
    expect(seen.id).toBe("otter-weir");
    const next = { id: "ferry", text: `${seen.text}| D |\n`, settings: seen.settings };
    given(await book.write({ ...next, before: seen.text }));
    expect(given(await book.read("otter-weir")).text).toBe(next.text);
  });

  test.each([
    ["that already says its title", "ferry", "Ferry"],
    ["of a second song of one title", "ferry-2", "Ferry"],
    ["that the player named by hand", "From the pub", "Ferry"],
    ["of a song without a title", "ferry", ""],
  ])("%s stays", async (_which, id, title) => {
    const home = await tempFolder();
    await mkdir(join(home, "songbook"));
    await writeFile(join(home, "songbook", `${id}.txt`), chart(title));
    const book = makeBook(home, quietDisk());
    expect(given(await book.settle(id))).toEqual({ id });
  });

  test("goes there and back again without ever leading in circles", async () => {
    const { book } = await openBook();
    await rename(book, "Otter Weir");
    await book.settle("ferry");
    const { settings, text } = given(await book.read("otter-weir"));
    const back = { id: "otter-weir", text: chart("Ferry"), settings };
    given(await book.write({ ...back, before: text }));
    expect(given(await book.settle("otter-weir"))).toEqual({ id: "ferry" });
    given(await book.remove("ferry"));
    expect(says(await book.read("otter-weir"))).toContain("no longer in the songbook");
  });
});

describe("settings", () => {
  test("of a later version are refused in words, and neither read, written nor removed", async () => {
    const { home, book } = await openBook();
    const path = join(home, "songbook", "ferry.json");
    await writeFile(path, JSON.stringify({ version: 2, plan: { hands: 3 } }));
    const before = await contentsOf(home);
    const song = { id: "ferry", text: "| D |\n", settings: newSongSettings };
    const answers = [
      await book.read("ferry"),
      await book.write({ ...song, before: chart("Ferry") }),
      await book.remove("ferry"),
      await book.settle("ferry"),
    ];
    for (const answer of answers) expect(says(answer)).toContain("a later Shortslide");
    expect(await contentsOf(home)).toEqual(before);
    await rm(path);
    expect((await book.read("ferry")).ok).toBe(true);
  });

  test("changed in another window meanwhile are not written over", async () => {
    const { book } = await openBook();
    const seen = given(await book.read("ferry"));
    const theirs = { ...seen.settings, playTempo: 96 };
    const mine = { ...seen.settings, playTempo: 61 };
    const write = { id: "ferry", text: seen.text, before: seen.text };
    given(await book.write({ ...write, settings: theirs, settingsBefore: seen.settings }));
    const late = await book.write({ ...write, settings: mine, settingsBefore: seen.settings });
    expect(late).toMatchObject({ ok: false, problem: { code: "changed" } });
    expect(given(await book.read("ferry")).settings).toEqual(theirs);
    given(await book.write({ ...write, settings: mine, settingsBefore: theirs }));
    expect(given(await book.read("ferry")).settings).toEqual(mine);
  });
});
