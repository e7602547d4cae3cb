// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { Evening } from "../../../src-renderer/state/evening.svelte.ts";
import { MusicStand } from "../../../src-renderer/state/musicStand.svelte.ts";
import { Navigation } from "../../../src-renderer/state/navigation.svelte.ts";
import { Songbook } from "../../../src-renderer/state/songbook.svelte.ts";
import { withSetList, withSongChanged, withSongs } from "../../../src-shared/book/editSetLists.ts";
import { MemoryHost, storedSong } from "./memoryHost.ts";

const titles = ["Alder Gate", "Bramble Cut", "Cinder Lane"];
const ids = ["a", "b", "c"];

const jamEvening = async () => {
  const memory = new MemoryHost(
    titles.map((title, index) => storedSong(ids[index] ?? "", `Title: ${title}\nKey: G\n| G |`)),
  );
  const songs = titles.map((title, index) => ({ id: ids[index] ?? "", title }));
  const list = withSongs({ id: "fri", name: "Friday", goesOn: true, songs: [] }, songs);
  memory.shelf = withSetList(memory.shelf, withSongChanged(list, 1, { key: "A" }));
  const songbook = new Songbook(memory.host);
  await songbook.refresh();
  const hashes: string[] = [];
  const navigation = new Navigation("#/songbook", {
    push: (hash) => hashes.push(hash),
    replace: () => undefined,
  });
  const stand = new MusicStand(memory.host);
  const evening = new Evening(songbook, stand, navigation);
  return { memory, songbook, stand, evening, hashes };
};

test("a set list is played from any of its songs, to the last and back", async () => {
  const { evening, hashes, stand } = await jamEvening();
  expect(await evening.begin("fri", 1)).toBe(null);
  expect([evening.current?.song.title, evening.next?.song.title]).toEqual([
    "Bramble Cut",
    "Cinder Lane",
  ]);
  expect(evening.progress).toEqual({ place: 2, of: 3 });
  await evening.step(1, true);
  expect([stand.song?.id, evening.startsNow, evening.next]).toEqual(["c", true, null]);
  expect(await evening.step(1, true)).toBe(null);
  expect(stand.song?.id).toBe("c");
  await evening.step(-1, false);
  expect([stand.song?.id, evening.startsNow]).toEqual(["b", false]);
  expect(hashes).toEqual(["#/play/b", "#/play/c", "#/play/b"]);
});

test("a song is in the key of the evening as long as that lasts, and is kept in its own", async () => {
  const { evening, memory, stand } = await jamEvening();
  await evening.begin("fri", 1);
  expect(stand.song?.walk.song.key.tonic).toBe("A");
  stand.song?.change({ countInBars: 2 });
  await stand.song?.save();
  expect(memory.songs.get("b")?.settings).toMatchObject({
    countInBars: 2,
    plan: { playKey: null },
  });
  evening.end();
  expect(stand.song?.walk.song.key.tonic).toBe("G");
  expect(evening.current).toBe(null);
});

test("a song that is out of the songbook is passed over", async () => {
  const { evening, memory, songbook, stand } = await jamEvening();
  memory.songs.delete("b");
  await songbook.refresh();
  await evening.begin("fri", 0);
  expect(evening.progress).toEqual({ place: 1, of: 2 });
  await evening.step(1, false);
  expect(stand.song?.id).toBe("c");
});

test("a set list of which no song is there says so", async () => {
  const { evening, memory, songbook } = await jamEvening();
  memory.songs.clear();
  await songbook.refresh();
  expect(await evening.begin("fri", 0)).toMatchObject({ code: "not-found" });
  expect(evening.list).toBe(null);
});

test("a song whose file takes its title's name on the way is still the one that is up", async () => {
  const { evening, memory, stand, songbook } = await jamEvening();
  memory.settled.set("b", "bramble-cut");
  await evening.begin("fri", 1);
  expect([stand.song?.id, stand.renamed]).toEqual([
    "bramble-cut",
    { from: "b", to: "bramble-cut" },
  ]);
  songbook.moved("b", "bramble-cut");
  expect(evening.has("bramble-cut")).toBe(true);
});
