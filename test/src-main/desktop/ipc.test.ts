import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { answerScreen } from "../../../src-main/desktop/ipc.ts";
import { makeHost } from "../../../src-main/services/makeHost.ts";
import { channelOf, verbNames } from "../../../src-shared/host.ts";
import { firstPreferences } from "../../../src-shared/settings.ts";
import { tempFolder } from "../tempFolder.ts";
import { quietDisk } from "../testDisk.ts";
import { frameAt, IpcLine } from "./ipcLine.ts";

const refusal = { ok: false, problem: { code: "refused" } };

describe("a call over IPC", () => {
  test("has one channel for each verb of the table and no other", async () => {
    const line = new IpcLine();
    answerScreen(line, makeHost(await tempFolder(), quietDisk()), () => null);
    expect([...line.handlers.keys()]).toEqual(verbNames.map(channelOf));
  });

  test.each([
    "https://example.org/",
    "file:///shortslide/index.html",
    "shortslide://other/",
    "shortslide:app",
    "about:blank",
    "",
  ])("is refused while our frame shows %j", async (url) => {
    const line = new IpcLine();
    const frame = frameAt(url);
    answerScreen(line, makeHost(await tempFolder(), quietDisk()), () => frame);
    expect(await line.invoke(frame, channelOf("listSongs"), null)).toMatchObject(refusal);
  });

  test("is refused from another frame that shows our screen", async () => {
    const line = new IpcLine();
    const frame = frameAt("shortslide://app/");
    answerScreen(line, makeHost(await tempFolder(), quietDisk()), () => frame);
    const copy = frameAt("shortslide://app/");
    expect(await line.invoke(copy, channelOf("listSongs"), null)).toMatchObject(refusal);
    expect(await line.invoke(null, channelOf("listSongs"), null)).toMatchObject(refusal);
  });

  test("is refused when there is no window, even from no frame", async () => {
    const line = new IpcLine();
    answerScreen(line, makeHost(await tempFolder(), quietDisk()), () => null);
    expect(await line.invoke(null, channelOf("listSongs"), null)).toMatchObject(refusal);
  });

  test("counts as under way until it is answered", async () => {
    const line = new IpcLine();
    const frame = frameAt("shortslide://app/index.html#/songbook");
    const home = join(await tempFolder(), "home");
    const calls = answerScreen(line, makeHost(home, quietDisk()), () => frame);
    expect(calls.underWay()).toBe(0);
    const answer = line.invoke(frame, channelOf("writePreferences"), firstPreferences);
    expect(calls.underWay()).toBe(1);
    await calls.settled();
    expect(await answer).toEqual({ ok: true, value: null });
    expect(calls.underWay()).toBe(0);
  });
});
