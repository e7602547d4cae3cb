import * as v from "valibot";
import { describe, expect, test } from "vitest";
import {
  setListOf,
  songMeant,
  withoutSetList,
  withoutSong,
  withSetList,
  withSetListAt,
  withSongChanged,
  withSongMoved,
  withSongs,
} from "../../../src-shared/book/editSetLists.ts";
import {
  allTags,
  removedId,
  tagsOf,
  withOpened,
  withoutSongs,
  withSongRenamed,
  withTag,
  withTagRenamed,
  withTags,
} from "../../../src-shared/book/editShelf.ts";
import {
  emptyShelf,
  MOST_SET_SONGS,
  type SetList,
  shelfSchema,
} from "../../../src-shared/book/shelf.ts";

const songs = ["a", "b", "c", "d"].map((id) => ({ id, title: id.toUpperCase() }));
const friday = withSongs({ id: "fri", name: "Friday", goesOn: true, songs: [] }, songs);
const order = (list: SetList) => list.songs.map(({ id }) => id).join("");

describe("tags", () => {
  const tagged = withTag(
    withTags(emptyShelf, "a", ["slow", "jam", "slow"]),
    ["a", "b"],
    "reel",
    true,
  );

  test("are kept once each, in the order of the alphabet", () => {
    expect([tagsOf(tagged, "a"), tagsOf(tagged, "b"), tagsOf(tagged, "c")]).toEqual([
      ["jam", "reel", "slow"],
      ["reel"],
      [],
    ]);
    expect(allTags(tagged)).toEqual(["jam", "reel", "slow"]);
  });

  test("taken off leave no empty entry behind", () => {
    expect(withTag(tagged, ["b"], "reel", false).tags.map(({ id }) => id)).toEqual(["a"]);
  });

  test("renamed to one that a song has already become one", () => {
    expect(tagsOf(withTagRenamed(tagged, "slow", "jam"), "a")).toEqual(["jam", "reel"]);
  });
});

describe("a song that gets another id", () => {
  test("is followed everywhere, and what a song that is gone had there goes", () => {
    const shelf = withOpened(
      withTags(withTags(withSetList(emptyShelf, friday), "a", ["mine"]), "z", ["old"]),
      "a",
      7,
    );
    const renamed = withSongRenamed(shelf, "a", "z");
    expect([renamed.tags, renamed.opened]).toEqual([
      [{ id: "z", tags: ["mine"] }],
      [{ id: "z", atMs: 7 }],
    ]);
    expect(renamed.setLists.map(order)).toEqual(["zbcd"]);
    expect(withSongRenamed(renamed, "z", "a").setLists.map(order)).toEqual(["abcd"]);
  });

  test("and is gone for good leaves its title on the set list alone", () => {
    const shelf = withTags(withSetList(emptyShelf, friday), "a", ["mine"]);
    const gone = withoutSongs(shelf, new Set(["a"]));
    expect([gone.tags, gone.setLists[0]?.songs[0]?.title]).toEqual([[], "A"]);
  });
});

describe("a set list", () => {
  test.each([
    [0, 2, "bcad"],
    [3, 0, "dabc"],
    [1, 99, "acdb"],
    [2, -5, "cabd"],
    [1, 1, "abcd"],
    [9, 0, "abcd"],
  ])("with song %i moved to %i has the order %s", (from, to, expected) => {
    expect(order(withSongMoved(friday, from, to))).toBe(expected);
  });

  test("has a song's key and times changed at its place alone", () => {
    const changed = withSongChanged(friday, 2, { key: "B", times: 4 });
    expect(changed.songs.map(({ key, times }) => [key, times])).toEqual([
      [null, 1],
      [null, 1],
      ["B", 4],
      [null, 1],
    ]);
    expect(order(withoutSong(changed, 2))).toBe("abd");
  });

  test("goes back to its place among the others", () => {
    const others = ["one", "two", "three"].map((id): SetList => ({ ...friday, id, name: id }));
    const shelf = others.reduce(withSetList, emptyShelf);
    const [, two] = others;
    if (!two) throw new Error("a second list was expected");
    const without = withoutSetList(shelf, "two");
    expect(setListOf(without, "two")).toBe(null);
    expect(withSetListAt(without, two, 1)).toEqual(shelf);
  });

  test("takes no more songs than it may have", () => {
    const many = Array.from({ length: MOST_SET_SONGS }, (_, index) => ({
      id: `${index}`,
      title: "",
    }));
    const full = withSongs(friday, many);
    expect(full.songs).toHaveLength(MOST_SET_SONGS);
    expect(v.is(shelfSchema, withSetList(emptyShelf, full))).toBe(true);
  });

  test("means the song of the id, else one of the title, and never one for a removed song", () => {
    const [first] = friday.songs;
    if (!first) throw new Error("a song was expected");
    expect(songMeant(songs, first)).toEqual({ id: "a", title: "A" });
    expect(songMeant(songs, { ...first, id: "old" })?.id).toBe("a");
    expect(songMeant(songs, { ...first, id: removedId("x") })).toBe(null);
    expect(songMeant([], first)).toBe(null);
  });
});
