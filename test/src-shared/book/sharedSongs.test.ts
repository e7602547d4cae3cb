import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  isSharedText,
  ownPatternsIn,
  readSharedSongs,
  type SharedSong,
  sharedSongsFile,
  withOwnNames,
} from "../../../src-shared/book/sharedSongs.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { newSongSettings } from "../../../src-shared/settings.ts";

const pattern = (name: string): Pattern => ({
  name,
  meter: "2/4",
  strokes: [{ picks: [{ finger: "T", on: 3 }], accent: true, damped: false }],
});

const song: SharedSong = {
  title: "Otter Weir",
  text: "Title: Otter Weir\nKey: D\n\n| D | G |\n",
  settings: {
    ...newSongSettings,
    playTempo: 84,
    picking: {
      ...newSongSettings.picking,
      song: { style: "own:Tin gate", density: "full" },
      sections: [
        { label: "B", manner: { style: "own:Mill", density: "beats" }, sung: true },
        { label: "C", manner: null, sung: false },
      ],
    },
  },
  tags: ["slow", "jam"],
};
const own = [pattern("Tin gate"), pattern("Mill"), pattern("Unused")];

describe("a file of shared songs", () => {
  test("gives back songs, settings, tags and the patterns that they are played with", () => {
    const second = { ...song, title: "Gate Ten", tags: [] };
    expect(readSharedSongs(sharedSongsFile([song, second], own))).toEqual({
      ok: true,
      songs: [song, second],
      patterns: [pattern("Tin gate"), pattern("Mill")],
    });
  });

  test("can be read by eye: a line of the chart is a line of the file", () => {
    const file = sharedSongsFile([song], own);
    expect(file.split("\n").map((line) => line.trim())).toContain('"| D | G |",');
    expect(isSharedText(file)).toBe(true);
  });

  test("keeps any chart, whatever stands in it", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), fc.string(), (text, title) => {
        const read = readSharedSongs(sharedSongsFile([{ ...song, text, title }], []));
        const lines = text.replaceAll(/\r\n?/g, "\n");
        expect(read).toMatchObject({ ok: true, songs: [{ text: lines, title }] });
      }),
    );
  });

  test("that is cut off anywhere is refused in words", () => {
    const file = sharedSongsFile([song], own).trimEnd();
    fc.assert(
      fc.property(fc.integer({ min: 0, max: file.length - 1 }), (end) => {
        expect(readSharedSongs(file.slice(0, end))).toMatchObject({ ok: false });
      }),
    );
  });

  test("of any JSON is read or refused, and never throws", () => {
    fc.assert(
      fc.property(fc.json(), (json) => {
        expect(typeof readSharedSongs(json).ok).toBe("boolean");
      }),
    );
  });

  test("of a later version is refused by name, whatever is in it", () => {
    expect(readSharedSongs('{ "shortslide": 2, "tunes": "elsewhere" }')).toMatchObject({
      ok: false,
      says: expect.stringContaining("later Shortslide"),
    });
  });

  test.each([
    ["a song without settings", { songs: [{ title: "A", chart: ["| G |"] }] }, "Song 1"],
    [
      "a chart that is no list",
      { songs: [{ title: "A", chart: "| G |", settings: newSongSettings }] },
      "Song 1, “chart”,",
    ],
    ["no songs", { songs: [] }, "This file"],
    [
      "a pattern without strokes",
      {
        songs: [{ title: "A", chart: [], settings: newSongSettings }],
        patterns: [{ ...pattern("Mill"), strokes: [] }],
      },
      "Pattern 1",
    ],
  ])("with %s says where it is wrong", (_what, rest, where) => {
    const read = readSharedSongs(JSON.stringify({ shortslide: 1, ...rest }));
    expect(read).toMatchObject({ ok: false, says: expect.stringContaining(where) });
  });

  test("is told from other files by its first key", () => {
    expect(isSharedText('{ "shortslidePatterns": 1 }')).toBe(false);
    expect(isSharedText("| G | C |")).toBe(false);
  });
});

describe("own patterns in a picking", () => {
  test("are named once each, and take other names together", () => {
    const { picking } = song.settings;
    expect(ownPatternsIn(picking)).toEqual(["Tin gate", "Mill"]);
    const renamed = withOwnNames(picking, new Map([["Mill", "Mill 2"]]));
    expect(ownPatternsIn(renamed)).toEqual(["Tin gate", "Mill 2"]);
    expect(withOwnNames(picking, new Map())).toEqual(picking);
  });
});
