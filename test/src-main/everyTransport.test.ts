import { rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import * as v from "valibot";
import { describe, expect, onTestFinished, test } from "vitest";
import { answerScreen } from "../../src-main/desktop/ipc.ts";
import { startServer } from "../../src-main/local/server.ts";
import { makeHandedFiles } from "../../src-main/services/handedFiles.ts";
import { makeHost, type OpenHost } from "../../src-main/services/makeHost.ts";
import { emptyShelf } from "../../src-shared/book/shelf.ts";
import { channelOf, type VerbName, verbNames, verbs } from "../../src-shared/host.ts";
import type { Pattern } from "../../src-shared/roll/pattern.ts";
import { firstPreferences, newSongSettings } from "../../src-shared/settings.ts";
import { loggedRound } from "../laws/loggedRound.ts";
import { frameAt, IpcLine } from "./desktop/ipcLine.ts";
import { sendCall } from "./local/localLine.ts";
import { contentsOf, tempFolder } from "./tempFolder.ts";
import { quietDisk } from "./testDisk.ts";

type Call = (name: VerbName, argument: unknown) => Promise<unknown>;

/** One way from the screen to the machine, and someone else who tries to use it. */
type Line = { readonly ours: Call; readonly strangers: Readonly<Record<string, Call>> };

const ipcLine = async (host: OpenHost): Promise<Line> => {
  const line = new IpcLine();
  const ours = frameAt("shortslide://app/");
  answerScreen(line, host, () => ours);
  const from =
    (frame: Parameters<IpcLine["invoke"]>[0]): Call =>
    (name, argument) =>
      line.invoke(frame, channelOf(name), argument);
  return {
    ours: from(ours),
    strangers: { "another frame": from(frameAt("https://example.org/")), "no frame": from(null) },
  };
};

const loopbackLine = async (host: OpenHost): Promise<Line> => {
  const server = await startServer(host, await tempFolder(), quietDisk().log);
  onTestFinished(() => server.close());
  const as =
    (headers: Readonly<Record<string, string>>): Call =>
    async (name, argument) =>
      JSON.parse(
        (await sendCall(server, name, { body: JSON.stringify({ argument }), headers })).text,
      );
  return {
    ours: as({}),
    strangers: {
      "another origin": as({ Origin: "https://example.org" }),
      "a wrong token": as({ Authorization: "Bearer guessed" }),
      "a rebound name": as({ Host: "example.org" }),
    },
  };
};

const lines = [
  ["IPC", ipcLine],
  ["the loopback server", loopbackLine],
] as const;

const ferry = "Title: Ferry\n| G | D |\n";

/** A home with a song in it and one removed, and for each verb what may be asked of it. */
const filledHome = async (): Promise<{
  readonly home: string;
  readonly host: OpenHost;
  readonly allowed: Readonly<Record<VerbName, unknown>>;
}> => {
  const home = join(await tempFolder(), "home");
  const handed = makeHandedFiles();
  const host = makeHost(home, quietDisk(), handed);
  const song = { title: "Ferry", text: "Title: Ferry\n| G | C |\n", settings: newSongSettings };
  await host.createSong(song);
  const second = await host.createSong({ ...song, title: "Tin Ladle" });
  const removed = await host.removeSong({ id: second.ok ? second.value.id : "" });
  const ticket = removed.ok ? removed.value.ticket : "";
  await host.appendLog({ version: 1, kind: "round", ...loggedRound("earlier") });
  await host.writeSong({ ...song, id: "ferry", text: ferry, before: song.text });
  const kept = await host.listVersions({ id: "ferry" });
  const version = kept.ok ? (kept.value[0]?.version ?? "") : "";
  await writeFile(join(home, "shared.shortslide"), "{}");
  handed.offer([join(home, "shared.shortslide")]);
  return {
    home,
    host,
    allowed: {
      listSongs: null,
      readSong: { id: "ferry" },
      createSong: { ...song, title: "Gate Ten" },
      writeSong: { id: "ferry", text: "| D |\n", settings: newSongSettings, before: ferry },
      removeSong: { id: "ferry" },
      restoreSong: { ticket },
      listVersions: { id: "ferry" },
      readVersion: { id: "ferry", version },
      mendSong: { id: "ferry" },
      noteError: { says: "a slip", at: "at here" },
      readErrors: null,
      listRemoved: null,
      eraseRemoved: { tickets: [ticket] },
      settleSong: { id: "ferry" },
      markOpened: { id: "ferry" },
      readShelf: null,
      writeShelf: { ...emptyShelf, tags: [{ id: "ferry", tags: ["jam"] }] },
      takeFiles: null,
      readPreferences: null,
      writePreferences: { ...firstPreferences, theme: "dark" },
      readPatterns: null,
      writePatterns: [ownPattern],
      readLog: null,
      appendLog: { version: 1, kind: "round", ...loggedRound("first") },
    },
  };
};

const ownPattern: Pattern = {
  name: "Tin gate",
  meter: "2/4",
  strokes: (["T", "I", "T", "M"] as const).map((finger) => ({
    picks: [{ finger, on: finger === "M" ? "fifth" : 2 }],
    accent: finger === "I",
    damped: false,
  })),
};

const wrongArguments: readonly unknown[] = [
  { version: 1, kind: "deleted", id: "" },
  { version: 1, kind: "round", song: null, round: loggedRound("nameless").round },
  7,
  "ferry",
  [7],
  [{ ...ownPattern, name: " " }],
  [{ ...ownPattern, strokes: [] }],
  [ownPattern, { ...ownPattern, meter: "4/4" }],
  {},
  { id: 7, ticket: 7, title: 7 },
  { id: "", ticket: "", title: "", text: "", settings: {} },
  { id: "x".repeat(121), ticket: "x".repeat(121) },
  { ...firstPreferences, theme: "purple" },
  { ...emptyShelf, revision: -1, tickets: "all" },
  { ...emptyShelf, tags: [{ id: "ferry", tags: [" "] }], tickets: [7] },
];

const problem = (code: string): unknown => ({
  ok: false,
  problem: { code, says: expect.stringMatching(/\S/), try: expect.stringMatching(/\S/) },
});

describe.each(lines)("over %s", (_way, open) => {
  test.each(verbNames)("%s gives what the table says", async (name) => {
    const { host, allowed } = await filledHome();
    const { ours } = await open(host);
    const answer = await ours(name, allowed[name]);
    const read = v.safeParse(v.object({ ok: v.literal(true), value: verbs[name].result }), answer);
    expect(read.issues).toBeUndefined();
    expect(read.output).toEqual(answer);
  });

  test.each(verbNames)("%s is refused to strangers, and nothing is touched", async (name) => {
    const { home, host, allowed } = await filledHome();
    const { strangers } = await open(host);
    const before = await contentsOf(home);
    for (const stranger of Object.values(strangers)) {
      expect(await stranger(name, allowed[name])).toEqual(problem("refused"));
    }
    expect(await contentsOf(home)).toEqual(before);
  });

  test.each(verbNames)(
    "%s says that a wrong argument is wrong, and touches nothing",
    async (name) => {
      const { home, host } = await filledHome();
      const { ours } = await open(host);
      const before = await contentsOf(home);
      for (const argument of wrongArguments) {
        expect(await ours(name, argument)).toEqual(problem("bad-argument"));
      }
      expect(await contentsOf(home)).toEqual(before);
    },
  );

  test.each(verbNames)("%s says that the disk fails, and does not reject", async (name) => {
    const { home, host, allowed } = await filledHome();
    await rm(home, { recursive: true });
    await writeFile(home, "a file where the folder was");
    const { ours } = await open(host);
    expect(await ours(name, allowed[name])).toEqual(problem("disk"));
  });
});
