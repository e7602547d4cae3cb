// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { Songbook } from "../../../src-renderer/state/songbook.svelte.ts";
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

  test("a song that is taken out can be put back as it was", async () => {
    const { memory, songbook } = await filled();
    const before = memory.songs.get("c");
    const [, , waltz] = songbook.found;
    const answer = waltz && (await songbook.remove(waltz));
    expect(titles(songbook)).toEqual(["Crooked Fence", "Éowin's Ferry"]);
    if (answer?.ok) await songbook.restore(answer.value);
    expect(titles(songbook)).toContain("Long Fence Waltz");
    expect(memory.songs.get("c")).toEqual(before);
    expect(songbook.removed).toEqual([]);
  });

  test("several songs are kept one after the other, counted as they come, and taken out together", async () => {
    const { memory, songbook } = await filled();
    const charts = ["Tin Roof", "Wet Stone"].map((title) => ({
      title,
      text: `Title: ${title}\n| D |`,
    }));
    const counts: number[] = [];
    const count = (kept: number) => counts.push(kept);
    const result = await songbook.createAll(charts, count, new AbortController().signal);
    expect(counts).toEqual([1, 2]);
    expect(result.problem).toBe(null);
    expect(titles(songbook)).toEqual(expect.arrayContaining(["Tin Roof", "Wet Stone"]));
    expect(await songbook.removeAll(new Set(result.kept.map(({ id }) => id)))).toBe(null);
    expect(titles(songbook)).toEqual(["Crooked Fence", "Éowin's Ferry", "Long Fence Waltz"]);
    expect(memory.bin.size).toBe(2);
    expect(songbook.removed.map(({ summary }) => summary.title)).toEqual(["Tin Roof", "Wet Stone"]);
  });

  test("keeping stops at the first song that cannot be kept, and where it is told to", async () => {
    const { memory, songbook } = await filled();
    const charts = ["Tin Roof", "Wet Stone"].map((title) => ({ title, text: `Title: ${title}` }));
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

  test("a song is duplicated with its settings under a title that no song has", async () => {
    const { memory, songbook } = await filled();
    const waltz = () => songbook.songs?.find(({ id }) => id === "c");
    const before = memory.songs.get("c");
    for (const name of ["Long Fence Waltz, copy", "Long Fence Waltz, copy 2"]) {
      const song = waltz();
      const copy = song && (await songbook.duplicate(song));
      expect(copy).toMatchObject({
        ok: true,
        value: { text: `Title: ${name}\n| G |`, settings: before?.settings },
      });
      expect(titles(songbook)).toContain(name);
    }
    expect(memory.songs.get("c")).toEqual(before);
  });

  test("a song that cannot be taken out stays in the list", async () => {
    const { memory, songbook } = await filled();
    memory.failing = diskFull;
    const [first] = songbook.found;
    const answer = first && (await songbook.remove(first));
    expect(answer).toEqual({ ok: false, problem: diskFull });
    expect(titles(songbook)).toContain("Crooked Fence");
    expect(songbook.removed).toEqual([]);
  });
});
