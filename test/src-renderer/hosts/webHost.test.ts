import { once } from "node:events";
import { createServer } from "node:http";
import { describe, expect, onTestFinished, test } from "vitest";
import { makeWebHost } from "../../../src-renderer/hosts/webHost.ts";
import { type Host, verbNames } from "../../../src-shared/host.ts";
import { newSongSettings } from "../../../src-shared/settings.ts";
import { serveHome } from "../../src-main/local/localLine.ts";
import { pageFetch } from "./pageFetch.ts";

const webHost = (origin: string, token: string): Host =>
  makeWebHost({ origin, token, fetch: pageFetch(origin) });

/** A real server that answers everything with one text. */
const answering = async (text: string): Promise<string> => {
  const server = createServer((_request, response) => response.end(text));
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  onTestFinished(() => {
    server.close();
    server.closeAllConnections();
  });
  const address = server.address();
  return `http://127.0.0.1:${typeof address === "object" ? address?.port : address}`;
};

describe("the host of a browser's page", () => {
  test("has every verb of the table and no other", () => {
    expect(Object.keys(webHost("http://127.0.0.1:1", "t"))).toEqual([...verbNames]);
  });

  test("makes and reads a song through the local server", async () => {
    const { origin, token } = await serveHome();
    const host = webHost(origin, token);
    const song = { title: "Ferry", text: "Title: Ferry\n| G |\n", settings: newSongSettings };
    const made = await host.createSong(song);
    expect(made).toEqual({
      ok: true,
      value: { id: "ferry", text: song.text, settings: song.settings },
    });
    expect(await host.readSong({ id: "ferry" })).toEqual(made);
    expect(await host.readSong({ id: "none" })).toMatchObject({
      ok: false,
      problem: { code: "not-found" },
    });
  });

  test("saves a chart too long for a last save on leaving, too", async () => {
    const { origin, token } = await serveHome();
    const host = webHost(origin, token);
    const text = `Title: Ferry\n${"| G | C | D | G |\n".repeat(9_000)}`;
    const made = await host.createSong({ title: "Ferry", text, settings: newSongSettings });
    expect(made).toMatchObject({ ok: true, value: { text } });
  });

  test("says in words that its token is of another start", async () => {
    const { origin } = await serveHome();
    expect(await webHost(origin, "").listSongs(null)).toMatchObject({
      ok: false,
      problem: {
        code: "refused",
        try: "Open the address that Shortslide printed when it started.",
      },
    });
  });

  test("says in words that the server has ended", async () => {
    const { origin, token, close } = await serveHome();
    await close();
    expect(await webHost(origin, token).listSongs(null)).toMatchObject({
      ok: false,
      problem: { code: "unreachable" },
    });
  });

  test("says in words that something else answers in the server's place", async () => {
    const host = webHost(await answering("<h1>hello</h1>"), "t");
    expect(await host.listSongs(null)).toMatchObject({ problem: { code: "unreachable" } });
  });

  test.each([
    "null",
    "{}",
    '{"ok":true}',
    '{"ok":true,"value":[{"id":"ferry"}]}',
    '{"ok":false,"problem":{"code":"what","says":"x","try":"y"}}',
  ])("takes %s for no answer", async (text) => {
    const host = webHost(await answering(text), "t");
    expect(await host.listSongs(null)).toMatchObject({ ok: false, problem: { code: "bug" } });
  });
});
