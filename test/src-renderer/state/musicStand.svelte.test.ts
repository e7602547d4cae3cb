// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { MusicStand } from "../../../src-renderer/state/musicStand.svelte.ts";
import { bestPlace } from "../../../src-renderer/state/place.ts";
import { HandClock } from "./handClock.ts";
import { diskFull, MemoryHost, storedSong } from "./memoryHost.ts";

const ferry = storedSong("ferry", "Title: Ferry\n| G | D |");
const fence = storedSong("fence", "Title: Fence\n| C |");

const stood = () => {
  const memory = new MemoryHost([ferry, fence]);
  return { memory, stand: new MusicStand(memory.host, new HandClock()) };
};

test("a song that is opened lies on the stand", async () => {
  const { stand } = stood();
  await stand.open("ferry");
  expect(stand.song?.text).toBe(ferry.text);
});

test("opening the song that lies there keeps it, with its undo", async () => {
  const { stand } = stood();
  await stand.open("ferry");
  const before = stand.song;
  before?.edit("| D |");
  await stand.open("ferry");
  expect(stand.song).toBe(before);
  expect(stand.song?.canUndo).toBe(true);
});

test("a song is saved before another takes its place", async () => {
  const { memory, stand } = stood();
  await stand.open("ferry");
  stand.song?.edit("| Em |");
  await stand.open("fence");
  expect(memory.songs.get("ferry")?.text).toBe("| Em |");
  expect(stand.song?.id).toBe("fence");
});

test("a song that cannot be saved stays, and the other waits", async () => {
  const { memory, stand } = stood();
  await stand.open("ferry");
  stand.song?.edit("| Em |");
  memory.failing = diskFull;
  await stand.open("fence");
  expect([stand.song?.id, stand.song?.text, stand.heldUp]).toEqual([
    "ferry",
    "| Em |",
    { id: "fence" },
  ]);
  memory.failing = null;
  await stand.retry();
  expect([stand.song?.id, stand.heldUp]).toEqual(["fence", null]);
  expect(memory.songs.get("ferry")?.text).toBe("| Em |");
});

test("leaving without saving gives up the changes only when it is asked for", async () => {
  const { memory, stand } = stood();
  await stand.open("ferry");
  stand.song?.edit("| Em |");
  memory.failing = diskFull;
  await stand.open("fence");
  memory.failing = null;
  await stand.openAnyway();
  expect(stand.song?.id).toBe("fence");
  expect(memory.songs.get("ferry")?.text).toBe(ferry.text);
});

test("of two songs asked for at once the last one comes to lie there", async () => {
  const { memory, stand } = stood();
  memory.holdUp();
  const both = [stand.open("ferry"), stand.open("fence")];
  memory.letThrough();
  await Promise.all(both);
  expect(stand.song?.id).toBe("fence");
});

test("a song that cannot be read is told in words, and can be tried again", async () => {
  const { memory, stand } = stood();
  memory.failing = diskFull;
  await stand.open("ferry");
  expect(stand.on).toEqual({ kind: "failed", id: "ferry", problem: diskFull });
  memory.failing = null;
  await stand.retry();
  expect(stand.song?.id).toBe("ferry");
});

test("a song taken out of the songbook is off the stand, and not written again", async () => {
  const { memory, stand } = stood();
  await stand.open("ferry");
  const gone = stand.song;
  gone?.edit("| Em |");
  stand.clear("ferry");
  await gone?.save();
  expect([stand.song, memory.written.length]).toEqual([null, 0]);
});

test("a song that was changed elsewhere is kept beside the other, and goes on as its own", async () => {
  const { memory, stand } = stood();
  await stand.open("ferry");
  stand.song?.edit("Title: Ferry\n| Em |");
  memory.songs.set("ferry", storedSong("ferry", "Title: Ferry\n| A |"));
  await stand.song?.save();
  expect(await stand.keepMine()).toBe(null);
  expect(stand.song?.id).not.toBe("ferry");
  expect(stand.song?.text).toBe("Title: Ferry (mine)\n| Em |");
  expect(memory.songs.get("ferry")?.text).toBe("Title: Ferry\n| A |");
  stand.song?.edit("Title: Ferry (mine)\n| D |");
  await stand.song?.save();
  expect(memory.songs.get(stand.song?.id ?? "")?.text).toBe("Title: Ferry (mine)\n| D |");
});

test("what is typed while a song is being kept goes into it", async () => {
  const { memory, stand } = stood();
  await stand.open("ferry");
  stand.song?.edit("Title: Ferry\n| Em |");
  memory.songs.delete("ferry");
  await stand.song?.save();
  expect(stand.song?.conflict?.code).toBe("not-found");
  memory.holdUp();
  const keeping = stand.keepMine();
  stand.song?.edit("Title: Ferry\n| Em | A |");
  memory.letThrough();
  await keeping;
  await stand.song?.save();
  expect(memory.songs.get(stand.song?.id ?? "")?.text).toBe("Title: Ferry\n| Em | A |");
});

test("a song that cannot be kept stays where it is", async () => {
  const { memory, stand } = stood();
  await stand.open("ferry");
  const mine = stand.song;
  memory.songs.delete("ferry");
  mine?.edit("| Em |");
  await mine?.save();
  memory.failing = diskFull;
  expect(await stand.keepMine()).toEqual(diskFull);
  expect([stand.song, mine?.saving]).toEqual([mine, "failed"]);
});

test("a new song is welcomed once", () => {
  const { stand } = stood();
  stand.announce("fence");
  expect([stand.welcomes("ferry"), stand.welcomes("fence"), stand.welcomes("fence")]).toEqual([
    false,
    true,
    false,
  ]);
});

test.each([
  ["Title: Ferry\n| G | D |", "play"],
  ["Title: Ferry\n| G | Hx |", "chart"],
  ["Title: Ferry\n", "chart"],
])("a song with the chart %j opens on %s", async (text, kind) => {
  const stand = new MusicStand(new MemoryHost([storedSong("ferry", text)]).host);
  await stand.open("ferry");
  expect(stand.song && bestPlace(stand.song)).toEqual({ kind, id: "ferry" });
});
