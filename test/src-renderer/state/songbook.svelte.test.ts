// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { type BookSong, matching, songsIn } from "../../../src-renderer/state/findSongs.ts";
import { Songbook } from "../../../src-renderer/state/songbook.svelte.ts";
import { tagsOf, withTags } from "../../../src-shared/book/editShelf.ts";
import type { Host, SongSummary } from "../../../src-shared/host.ts";
import { diskFull, MemoryHost, storedSong } from "./memoryHost.ts";

const titled = (id: string, title: string) => storedSong(id, `Title: ${title}\n| G |`);

const summaryOf = (title: string): SongSummary => ({
  id: title.toLowerCase(),
  title,
  key: "D",
  meter: "3/4",
  tempo: 92,
  chords: ["D"],
  changedMs: 11,
});

const filled = async () => {
  const memory = new MemoryHost([
    titled("a", "Crooked Fence"),
    titled("b", "Éowin's Ferry"),
    titled("c", "Long Fence Waltz"),
  ]);
  const songbook = new Songbook(memory.host);
  await songbook.refresh();
  return { memory, songbook };
};

const titles = (songbook: Songbook) => songbook.found.map(({ title }) => title);

describe("the list", () => {
  test("a songbook that has not been read yet has no list, not an empty one", () => {
    expect(new Songbook(new MemoryHost().host).songs).toBe(null);
  });

  test("a disk that fails is told, and the list that was there stays", async () => {
    const { memory, songbook } = await filled();
    memory.failing = diskFull;
    await songbook.refresh();
    expect(songbook.problem).toEqual(diskFull);
    expect(songbook.songs).toHaveLength(3);
    memory.failing = null;
    await songbook.refresh();
    expect(songbook.problem).toBe(null);
  });

  test("an answer that comes late does not take the place of a newer one", async () => {
    const answers: ((titles: readonly string[]) => void)[] = [];
    const listSongs: Host["listSongs"] = () =>
      new Promise((done) => {
        answers.push((titles) => done({ ok: true, value: titles.map(summaryOf) }));
      });
    const songbook = new Songbook({ ...new MemoryHost().host, listSongs });
    const both = [songbook.refresh(), songbook.refresh()];
    answers[1]?.(["Tin Roof"]);
    answers[0]?.(["Crooked Fence"]);
    await Promise.all(both);
    expect(titles(songbook)).toEqual(["Tin Roof"]);
  });
});

describe("search", () => {
  test.each([
    ["fence", ["Crooked Fence", "Long Fence Waltz"]],
    ["FENCE long", ["Long Fence Waltz"]],
    ["eowin", ["Éowin's Ferry"]],
    ["  ", ["Crooked Fence", "Éowin's Ferry", "Long Fence Waltz"]],
    ["polka", []],
    ["100 waltz", ["Long Fence Waltz"]],
    ["f#m ferry", ["Éowin's Ferry"]],
    ["f#", []],
  ])("looking for %j finds %j", async (search, expected) => {
    const { songbook } = await filled();
    songbook.search = search;
    expect(titles(songbook)).toEqual(expected);
  });
});

describe("songs in and out", () => {
  test("a new song is in the list", async () => {
    const { songbook } = await filled();
    const answer = await songbook.create("Tin Roof", "Title: Tin Roof\n| D |");
    expect(answer.ok).toBe(true);
    expect(titles(songbook)).toContain("Tin Roof");
  });

  test("songs that are taken out together are put back as they were", async () => {
    const { memory, songbook } = await filled();
    const before = new Map(memory.songs);
    const songs = songbook.together(["c", "a"]);
    expect(await songs.takeOut()).toBe(null);
    await songbook.refresh();
    expect(titles(songbook)).toEqual(["Éowin's Ferry"]);
    expect(songbook.out.map(({ title }) => title)).toEqual(["c", "a"]);
    expect([songs.out, songs.within]).toEqual([2, []]);
    expect(await songs.putBack()).toBe(null);
    await songbook.refresh();
    expect(new Map(memory.songs)).toEqual(before);
    expect([songs.out, songs.within]).toEqual([0, ["c", "a"]]);
  });

  test("a song that comes back under another name is taken out again under that", async () => {
    const { memory, songbook } = await filled();
    const songs = songbook.together(["c"]);
    await songs.takeOut();
    const [ticket, song] = [...memory.bin][0] ?? [];
    if (ticket === undefined || !song) throw new Error("a ticket was expected");
    memory.bin.set(ticket, { ...song, id: "c-2" });
    await songs.putBack();
    expect([songbook.ids.now("c"), songs.within]).toEqual(["c-2", ["c-2"]]);
    expect(await songs.takeOut()).toBe(null);
    expect(memory.songs.has("c-2")).toBe(false);
  });

  test("several songs are kept one after the other, counted as they come, and taken out together", async () => {
    const { memory, songbook } = await filled();
    const charts = ["Tin Roof", "Wet Stone"].map((title) => ({
      title,
      text: `Title: ${title}\n| D |`,
      settings: null,
    }));
    const counts: number[] = [];
    const count = (kept: number) => counts.push(kept);
    const result = await songbook.createAll(charts, count, new AbortController().signal);
    expect(counts).toEqual([1, 2]);
    expect(result.problem).toBe(null);
    expect(titles(songbook)).toEqual(expect.arrayContaining(["Tin Roof", "Wet Stone"]));
    const together = songbook.together(result.kept.map(({ id }) => id));
    expect(await together.takeOut()).toBe(null);
    await songbook.refresh();
    expect(titles(songbook)).toEqual(["Crooked Fence", "Éowin's Ferry", "Long Fence Waltz"]);
    expect(memory.bin.size).toBe(2);
  });

  test("keeping stops at the first song that cannot be kept, and where it is told to", async () => {
    const { memory, songbook } = await filled();
    const charts = ["Tin Roof", "Wet Stone"].map((title) => ({
      title,
      text: `Title: ${title}`,
      settings: null,
    }));
    const fail = () => {
      memory.failing = diskFull;
    };
    const failed = await songbook.createAll(charts, fail, new AbortController().signal);
    expect([failed.kept.length, failed.problem]).toEqual([1, diskFull]);
    memory.failing = null;
    const stop = new AbortController();
    const stopped = await songbook.createAll(charts, () => stop.abort(), stop.signal);
    expect([stopped.kept.length, stopped.problem]).toEqual([1, null]);
  });

  test("a song is duplicated with its settings and tags under a title that no song has", async () => {
    const { memory, songbook } = await filled();
    await songbook.shelf.edit((shelf) => withTags(shelf, "c", ["slow", "jam"]));
    const before = memory.songs.get("c");
    for (const name of ["Long Fence Waltz, copy", "Long Fence Waltz, copy 2"]) {
      const { kept, problem } = await songbook.duplicate(["c"]);
      expect(problem).toBe(null);
      expect(kept).toMatchObject([{ text: `Title: ${name}\n| G |`, settings: before?.settings }]);
      const copy = songbook.all.find(({ title }) => title === name);
      expect(copy?.tags).toEqual(["jam", "slow"]);
    }
    expect(memory.songs.get("c")).toEqual(before);
  });

  test("of two songs of one title both get titles of their own", async () => {
    const memory = new MemoryHost([titled("a", "Tin Roof"), titled("b", "Tin Roof")]);
    const songbook = new Songbook(memory.host);
    await songbook.refresh();
    await songbook.duplicate(["a", "b"]);
    expect(titles(songbook)).toEqual([
      "Tin Roof",
      "Tin Roof",
      "Tin Roof, copy",
      "Tin Roof, copy 2",
    ]);
  });

  test("a song that cannot be taken out stays in the list", async () => {
    const { memory, songbook } = await filled();
    memory.failing = diskFull;
    const songs = songbook.together(["a", "b"]);
    expect(await songs.takeOut()).toEqual(diskFull);
    expect([songs.out, songs.within]).toEqual([0, ["a", "b"]]);
    memory.failing = null;
    await songbook.refresh();
    expect(titles(songbook)).toContain("Crooked Fence");
  });

  test("a renamed song is looked for under its new id, also by what was done before", async () => {
    const { memory, songbook } = await filled();
    const songs = songbook.together(["a"]);
    memory.settled.set("a", "stone-wall");
    expect(await songbook.rename("a", "Stone Wall")).toEqual({
      ok: true,
      value: { id: "stone-wall" },
    });
    expect(titles(songbook)).toContain("Stone Wall");
    expect(songs.within).toEqual(["stone-wall"]);
    expect(await songs.takeOut()).toBe(null);
  });
});

describe("order", () => {
  const dated = (
    title: string,
    key: string,
    tempo: number,
    changedMs: number,
    openedMs: number,
  ) => ({
    ...summaryOf(title),
    key,
    tempo,
    changedMs,
    openedMs,
    tags: title.startsWith("T") ? ["tin"] : [],
  });
  const songs = [
    dated("Tin Roof 10", "G", 120, 5, 0),
    dated("Tin Roof 9", "Am", 96, 9, 21),
    dated("Crooked Fence", "A", 96, 7, 42),
  ];
  const named = (found: readonly BookSong[]) => found.map(({ title }) => title);

  test.each([
    ["title", ["Crooked Fence", "Tin Roof 9", "Tin Roof 10"]],
    ["key", ["Crooked Fence", "Tin Roof 9", "Tin Roof 10"]],
    ["tempo", ["Crooked Fence", "Tin Roof 9", "Tin Roof 10"]],
    ["changed", ["Tin Roof 9", "Crooked Fence", "Tin Roof 10"]],
    ["opened", ["Crooked Fence", "Tin Roof 9", "Tin Roof 10"]],
  ] as const)("songs are sorted by %s, those that are alike by title", (sort, expected) => {
    expect(named(songsIn(songs, { kind: "all" }, sort))).toEqual(expected);
  });

  test("recent are the songs that were opened, the last one first, whatever the order", () => {
    expect(named(songsIn(songs, { kind: "recent" }, "tempo"))).toEqual([
      "Crooked Fence",
      "Tin Roof 9",
    ]);
  });

  test("a tag's songs are those that have it, and a tag is found by searching", () => {
    expect(named(songsIn(songs, { kind: "tag", tag: "tin" }, "tempo"))).toEqual([
      "Tin Roof 9",
      "Tin Roof 10",
    ]);
    expect(named(matching(songs, "TIN 96"))).toEqual(["Tin Roof 9"]);
  });
});

describe("tags and set lists", () => {
  test("that another window changed at the same time are both kept", async () => {
    const { memory, songbook } = await filled();
    memory.shelf = withTags({ ...memory.shelf, revision: 4 }, "b", ["theirs"]);
    expect(await songbook.shelf.edit((shelf) => withTags(shelf, "a", ["mine"]))).toBe(null);
    expect([tagsOf(memory.shelf, "a"), tagsOf(memory.shelf, "b")]).toEqual([["mine"], ["theirs"]]);
    expect(songbook.shelf.value).toEqual(memory.shelf);
  });

  test("that cannot be written stay as they were, with the reason", async () => {
    const { memory, songbook } = await filled();
    memory.failing = diskFull;
    expect(await songbook.shelf.edit((shelf) => withTags(shelf, "a", ["mine"]))).toEqual(diskFull);
    expect(songbook.shelf.value.tags).toEqual([]);
  });
});
