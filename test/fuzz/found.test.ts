import { describe, expect, test } from "vitest";
import { makeHost } from "../../src-main/services/makeHost.ts";
import { newSongSettings } from "../../src-shared/settings.ts";
import { tempFolder } from "../src-main/tempFolder.ts";
import { quietDisk } from "../src-main/testDisk.ts";

// What fuzzing has found, each with its seed, as an example for good.

describe("a song whose text UTF-8 gives back otherwise", () => {
  test.each([
    ["a byte order mark at its start", "\uFEFFTitle: x\n", "Title: x\n"],
    ["two of them", "\uFEFF\uFEFF| G |\n", "| G |\n"],
    ["half a surrogate pair", "Title: \uD83C x\n", "Title: \uFFFD x\n"],
  ])("(%s) is kept, read and written again without seeming changed", async (_what, text, kept) => {
    // service, seed 1510733498
    const host = makeHost(await tempFolder(), quietDisk());
    const song = { id: "gate-ten", settings: newSongSettings };
    const created = await host.createSong({ title: "Gate Ten", text, settings: newSongSettings });
    expect(created).toEqual({ ok: true, value: { ...song, text: kept } });
    expect(await host.readSong({ id: "gate-ten" })).toEqual(created);
    const next = { ...song, text: `${text}| C |\n`, before: text };
    expect(await host.writeSong(next)).toEqual({ ok: true, value: null });
  });
});
