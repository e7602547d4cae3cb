// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { sameTitle, shownRows } from "../../../../src-renderer/parts/foundSongs.ts";
import { BringIn } from "../../../../src-renderer/screens/songbook/bringIn.svelte.ts";
import { foundRows } from "../../../../src-renderer/screens/songbook/foundRow.ts";
import type { ReadFiles } from "../../../../src-renderer/screens/songbook/readingMessage.ts";
import { Songbook } from "../../../../src-renderer/state/songbook.svelte.ts";
import { type SharedSong, sharedSongsFile } from "../../../../src-shared/book/sharedSongs.ts";
import { takenIn } from "../../../../src-shared/exchange/patternFile.ts";
import type { Pattern } from "../../../../src-shared/roll/pattern.ts";
import { newSongSettings } from "../../../../src-shared/settings.ts";
import { diskFull, MemoryHost, storedSong } from "../../state/memoryHost.ts";

const tune = (number: number, title: string, body = '"G"G2 B2 | "Am"A4 |') =>
  `X:${number}\nT:${title}\nM:4/4\nL:1/4\nK:G\n${body}\n\n`;
const THREE = tune(1, "Sallow Lane") + tune(2, "Bare Hedge", "G4 |") + tune(3, "Tin Roof");
const bytesOf = (text: string) => new TextEncoder().encode(text);

/** The same reader without a thread of its own. */
const readHere: ReadFiles = async (files) => files.flatMap((file) => foundRows(file));

const withSongs = async (read: ReadFiles = readHere) => {
  const memory = new MemoryHost([storedSong("a", "Title: Tin Roof\n| G |")]);
  const songbook = new Songbook(memory.host);
  await songbook.refresh();
  return { memory, songbook, work: new BringIn(songbook, read, () => new Map()) };
};

describe("the rows found in a file", () => {
  const rows = foundRows({ name: "three.abc", bytes: bytesOf(THREE) });

  test("tell key, metre and bars of a song, and why another cannot be had", () => {
    expect(rows).toMatchObject([
      { kind: "song", title: "Sallow Lane", facts: ["G major", "4/4", "2 bars"] },
      { kind: "refused", title: "Bare Hedge", says: "This tune has no chord symbols." },
      { kind: "song", title: "Tin Roof" },
    ]);
  });

  test("are counted while they are read", () => {
    const heard: string[] = [];
    foundRows({ name: "three.abc", bytes: bytesOf(THREE) }, (done, of) =>
      heard.push(`${done}/${of}`),
    );
    expect(heard).toEqual(["1/3", "2/3", "3/3"]);
  });

  test("are one refusal with the file's name where the file cannot be read", () => {
    expect(foundRows({ name: "empty.abc", bytes: new Uint8Array() })).toMatchObject([
      { kind: "refused", title: null, file: "empty.abc", says: "The file is empty." },
    ]);
  });

  test("are narrowed by every word of a filter, and keep their places", () => {
    expect(shownRows(rows, "TIN g").map(({ index }) => index)).toEqual([2]);
    expect(shownRows(rows, "").map(({ index }) => index)).toEqual([0, 1, 2]);
    expect(shownRows(rows, "tin polka")).toEqual([]);
  });

  test("are told apart where a title is in the songbook or comes twice", () => {
    const [lane, , roof] = rows;
    if (!lane || !roof) throw new Error("three rows were expected");
    expect(sameTitle(roof, rows, new Set(["Tin Roof"]))).toContain("in your songbook");
    expect(sameTitle(lane, [...rows, { ...lane }], new Set())).toContain("more than once");
    expect(sameTitle(lane, rows, new Set())).toBe(null);
  });
});

describe("bringing songs in", () => {
  test("keeps nothing before it is told to, and then what is chosen", async () => {
    const { memory, work } = await withSongs();
    work.text = THREE;
    await work.readText();
    expect([...work.chosen]).toEqual([0]);
    expect(memory.songs.size).toBe(1);
    work.choose([2], true);
    const { kept } = await work.keep();
    expect(kept.map(({ text }) => text.split("\n")[0])).toEqual([
      "Title: Sallow Lane",
      "Title: Tin Roof",
    ]);
    expect(memory.songs.size).toBe(3);
    expect([work.stage.kind, work.text]).toEqual(["choosing", ""]);
  });

  test("says so where there is no text", async () => {
    const { work } = await withSongs();
    work.text = " \n";
    await work.readText();
    expect(work.problem).toContain("There is no text yet.");
    expect(work.stage.kind).toBe("choosing");
  });

  test("leaves the list as it was where the disk is full", async () => {
    const { memory, work } = await withSongs();
    work.text = THREE;
    await work.readText();
    memory.failing = diskFull;
    const { kept } = await work.keep();
    expect([kept, work.stage.kind, [...work.chosen]]).toEqual([[], "found", [0]]);
    expect(work.problem).toBe("The disk is full. Make room on it.");
    memory.failing = null;
    expect((await work.keep()).kept).toHaveLength(1);
  });

  test("a reading that is cancelled leaves nothing behind, also when it ends later", async () => {
    const ends: (() => void)[] = [];
    const slow: ReadFiles = async (files, onProgress) => {
      await new Promise<void>((end) => ends.push(end));
      onProgress({ done: 1, of: 1, says: "late" });
      return readHere(files, onProgress, new AbortController().signal);
    };
    const { work } = await withSongs(slow);
    work.text = THREE;
    const reading = work.readText();
    await Promise.resolve();
    await expect.poll(() => ends.length).toBe(1);
    work.cancel();
    ends[0]?.();
    await reading;
    expect([work.stage.kind, work.chosen.size, work.text]).toEqual(["choosing", 0, THREE]);
  });

  test("a reader that breaks off is told in words", async () => {
    const { work } = await withSongs(() => Promise.reject(new Error("out of memory")));
    work.text = THREE;
    await work.readText();
    expect(work.stage.kind).toBe("choosing");
    expect(work.problem).toContain("out of memory");
  });
});

describe("shared songs", () => {
  const gate = (on: 2 | 3): Pattern => ({
    name: "Tin gate",
    meter: "2/4",
    strokes: [{ picks: [{ finger: "T", on }], accent: false, damped: false }],
  });
  const shared = (title: string): SharedSong => ({
    title,
    text: `Title: ${title}\nKey: D\n\n| D | G |\n`,
    settings: {
      ...newSongSettings,
      playTempo: 84,
      picking: { ...newSongSettings.picking, song: { style: "own:Tin gate", density: "full" } },
    },
    tags: ["slow"],
  });
  const file = sharedSongsFile([shared("Otter Weir"), shared("Gate Ten")], [gate(2)]);

  test("are kept with settings and tags, their pattern once and under a name of its own", async () => {
    const memory = new MemoryHost();
    const songbook = new Songbook(memory.host);
    await songbook.refresh();
    let own: readonly Pattern[] = [gate(3)];
    const work = new BringIn(songbook, readHere, (patterns) => {
      const taken = takenIn(own, patterns);
      own = taken.patterns;
      return new Map(taken.renamed.map(({ from, to }) => [from, to]));
    });
    await work.readFiles([new File([file], "two.shortslide")]);
    const { kept, problem } = await work.keep();
    expect(problem).toBe(null);
    expect(own.map(({ name }) => name)).toEqual(["Tin gate", "Tin gate 2"]);
    expect(kept.map(({ settings }) => [settings.playTempo, settings.picking.song.style])).toEqual([
      [84, "own:Tin gate 2"],
      [84, "own:Tin gate 2"],
    ]);
    expect(songbook.all.map(({ title, tags }) => [title, tags])).toEqual([
      ["Otter Weir", ["slow"]],
      ["Gate Ten", ["slow"]],
    ]);
  });

  test("say what comes with them before anything is kept, and what is not in the file", () => {
    const rows = foundRows({ name: "two.shortslide", bytes: bytesOf(file) });
    expect(rows[0]).toMatchObject({
      read: expect.arrayContaining(["Own patterns: Tin gate"]),
      left: [],
    });
    const bare = foundRows({
      name: "bare.shortslide",
      bytes: bytesOf(sharedSongsFile([shared("Otter Weir")], [])),
    });
    expect(bare[0]).toMatchObject({
      left: [expect.stringContaining("“Tin gate” is not in the file")],
    });
  });

  test("in a broken file are one refusal with the file's name", () => {
    expect(foundRows({ name: "cut.shortslide", bytes: bytesOf(file.slice(0, 90)) })).toMatchObject([
      { kind: "refused", file: "cut.shortslide", says: expect.stringContaining("cut off") },
    ]);
  });
});
