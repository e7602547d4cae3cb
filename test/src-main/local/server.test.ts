import { once } from "node:events";
import { request } from "node:http";
import { connect } from "node:net";
import { join } from "node:path";
import { describe, expect, test, vi } from "vitest";
import { makeToken } from "../../../src-main/local/token.ts";
import { makeHost } from "../../../src-main/services/makeHost.ts";
import { screenHeaders } from "../../../src-main/services/screenHeaders.ts";
import { newSongSettings } from "../../../src-shared/settings.ts";
import { page, script, secret, waysOut } from "../screenFixture.ts";
import { contentsOf, tempFolder } from "../tempFolder.ts";
import { quietDisk } from "../testDisk.ts";
import { type Reply, sendCall, sendRaw, serveHome } from "./localLine.ts";

const problemOf = (reply: Reply): unknown => JSON.parse(reply.text).problem;

const song = { title: "Gate Ten", text: "Title: Gate Ten\n| D |\n", settings: newSongSettings };
const creating = { body: JSON.stringify({ argument: song }) };

describe("the local server", () => {
  test("is on 127.0.0.1 alone, and its first address bears the token in the fragment", async () => {
    const { address, origin, token } = await serveHome();
    const url = new URL(address);
    expect(url.origin).toBe(origin);
    expect(url.hostname).toBe("127.0.0.1");
    expect([url.pathname, url.search, url.hash]).toEqual(["/", "", `#token=${token}`]);
  });

  test("gives the page and its files to anyone here, without a secret in them", async () => {
    const { origin, token } = await serveHome();
    const first = await sendRaw(origin, { path: "/" });
    expect(first).toMatchObject({ status: 200, text: page });
    expect(first.headers).toMatchObject({
      "content-type": "text/html; charset=utf-8",
      "cache-control": "no-cache",
    });
    const next = await sendRaw(origin, { path: "/assets/index-B4x_9-Qz.js?x=1" });
    expect(next).toMatchObject({ status: 200, text: script });
    expect(next.headers["cache-control"]).toContain("immutable");
    expect(`${first.text}${JSON.stringify(first.headers)}`).not.toContain(token);
  });

  test("answers HEAD as GET, without the file", async () => {
    const { origin } = await serveHome();
    const reply = await sendRaw(origin, { method: "HEAD", path: "/" });
    expect(reply).toMatchObject({ status: 200, text: "" });
    expect(reply.headers["content-length"]).toBe(String(page.length));
  });

  test("answers a call of its own page", async () => {
    const server = await serveHome();
    const reply = await sendCall(server, "createSong", creating);
    expect(reply.status).toBe(200);
    expect(JSON.parse(reply.text)).toEqual({
      ok: true,
      value: { id: "gate-ten", text: song.text, settings: song.settings },
    });
    expect(reply.headers["cache-control"]).toBe("no-store");
  });

  test("sends the headers of the screen with every answer, and none that let other pages in", async () => {
    const server = await serveHome();
    const replies = [
      await sendRaw(server.origin, { path: "/" }),
      await sendRaw(server.origin, { path: "/none.js" }),
      await sendRaw(server.origin, { method: "PUT", path: "/" }),
      await sendCall(server, "listSongs"),
      await sendCall(server, "none"),
      await sendCall(server, "listSongs", { headers: { Authorization: "" } }),
      await sendRaw(server.origin, { path: "/", headers: { Host: "evil.example" } }),
    ];
    for (const { headers } of replies) {
      for (const [name, value] of Object.entries(screenHeaders)) {
        expect(headers[name.toLowerCase()]).toBe(value);
      }
      const names = Object.keys(headers);
      expect(names.filter((name) => name.startsWith("access-control-"))).toEqual([]);
      expect(names).not.toContain("set-cookie");
    }
    expect(replies.map(({ status }) => status)).toEqual([200, 404, 405, 200, 404, 401, 403]);
  });
});

describe("an attacker", () => {
  test.each([
    ["another page", { Origin: "https://evil.example" }, 403],
    ["a page on another port", { Origin: "http://127.0.0.1:1" }, 403],
    ["a page under this machine's other name", { Origin: "http://localhost" }, 403],
    ["a sandboxed page", { Origin: "null" }, 403],
    ["a page with no token", { Authorization: "" }, 401],
    ["a page with a token it guessed", { Authorization: `Bearer ${makeToken()}` }, 401],
    ["a form, which cannot send JSON", { "Content-Type": "text/plain" }, 415],
    ["a name rebound to this address", { Host: "evil.example" }, 403],
    ["localhost", { Host: "localhost" }, 403],
  ] as const)(
    "as %s is refused in words, and nothing is written",
    async (_who, headers, status) => {
      const server = await serveHome();
      const reply = await sendCall(server, "createSong", { ...creating, headers });
      expect(reply.status).toBe(status);
      expect(problemOf(reply)).toEqual({
        code: status === 415 ? "bad-argument" : "refused",
        says: expect.stringMatching(/\.$/),
        try: expect.stringMatching(/\.$/),
      });
      expect(await contentsOf(server.home)).toEqual({});
    },
  );

  test("without any origin is refused", async () => {
    const { origin, token, home } = await serveHome();
    const headers = { Authorization: `Bearer ${token}`, "Content-Type": "application/json" };
    const path = "/call/createSong";
    const reply = await sendRaw(origin, { method: "POST", path, headers, ...creating });
    expect(reply.status).toBe(403);
    expect(await contentsOf(home)).toEqual({});
  });

  test("with the token in the address instead of the header is refused", async () => {
    const server = await serveHome();
    const path = `/call/createSong?token=${server.token}`;
    const headers = { Authorization: "" };
    expect((await sendCall(server, "", { ...creating, path, headers })).status).toBe(401);
  });

  test("who asks first whether another origin may call gets no leave", async () => {
    const { origin } = await serveHome();
    const reply = await sendRaw(origin, {
      method: "OPTIONS",
      path: "/call/createSong",
      headers: {
        Origin: "https://evil.example",
        "Access-Control-Request-Method": "POST",
        "Access-Control-Request-Headers": "authorization,content-type",
      },
    });
    expect(reply.status).toBe(405);
    expect(Object.keys(reply.headers).join()).not.toContain("access-control");
  });

  test.each(waysOut)("who asks for %j gets no file", async (path) => {
    const { origin } = await serveHome();
    const reply = await sendRaw(origin, { path });
    expect(reply.status).toBe(404);
    expect(reply.text).not.toContain(secret);
  });

  test("who asks for a whole address, as of a proxy, gets nothing", async () => {
    const { origin } = await serveHome();
    expect((await sendRaw(origin, { path: "http://evil.example/" })).status).toBe(404);
  });

  test.each([
    "constructor",
    "__proto__",
    "toString",
    "",
    "listSongs/",
    "LISTSONGS",
    "../call/listSongs",
  ])("who calls %j finds no such verb", async (verb) => {
    const reply = await sendCall(await serveHome(), verb);
    expect(reply.status).toBe(404);
    expect(problemOf(reply)).toMatchObject({ code: "not-found" });
  });

  test.each(["GET", "HEAD", "PUT", "DELETE", "PATCH"])(
    "who calls by %s is refused",
    async (method) => {
      const server = await serveHome();
      const reply = await sendCall(server, "createSong", { ...creating, method });
      expect(reply.status).toBe(405);
      expect(reply.headers).toMatchObject({ allow: "POST" });
      expect(await contentsOf(server.home)).toEqual({});
    },
  );

  test.each([
    "",
    "{",
    "null",
    "[]",
    '"text"',
    "{}",
    '{"argument":',
    Buffer.from([0x7b, 0xff, 0xfe, 0x7d]),
  ])("who sends %j as the call is told that it cannot be read", async (body) => {
    const reply = await sendCall(await serveHome(), "listSongs", { body });
    expect(reply.status).toBe(400);
    expect(problemOf(reply)).toMatchObject({ code: "bad-argument" });
  });

  test.each([
    ["in one piece", {}],
    ["without saying how much", { "Transfer-Encoding": "chunked" }],
  ] as const)(
    "who sends more than 8 MB %s is told so, and the server goes on",
    async (_how, headers) => {
      const server = await serveHome();
      const argument = { ...song, text: "x".repeat(9 * 1024 * 1024) };
      const body = JSON.stringify({ argument });
      const reply = await sendCall(server, "createSong", { body, headers });
      expect(reply.status).toBe(413);
      expect(problemOf(reply)).toMatchObject({ code: "bad-argument", try: "Shorten the chart." });
      expect((await sendCall(server, "listSongs")).status).toBe(200);
      expect(await contentsOf(server.home)).toEqual({});
    },
  );

  test("who sends something that is no HTTP is turned away, and the server goes on", async () => {
    const server = await serveHome();
    const socket = connect({ host: "127.0.0.1", port: Number(new URL(server.origin).port) });
    socket.end("let me in\r\n\r\n");
    const chunks: unknown[] = [];
    socket.on("data", (chunk) => chunks.push(chunk));
    await once(socket, "close");
    expect(chunks.join("")).toMatch(/^HTTP\/1\.1 400 /);
    expect((await sendCall(server, "listSongs")).status).toBe(200);
  });

  test("who breaks off in the middle leaves a line in the log, and the server goes on", async () => {
    const server = await serveHome();
    const call = request(`${server.origin}/call/createSong`, {
      method: "POST",
      headers: {
        Origin: server.origin,
        Authorization: `Bearer ${server.token}`,
        "Content-Type": "application/json",
        "Content-Length": "1000",
      },
    });
    const gone = once(call, "error");
    await new Promise<void>((resolve) => call.write('{"argument":', () => resolve()));
    call.destroy(new Error("the player closed the page"));
    await gone;
    await vi.waitFor(() => expect(server.lines.join()).toContain("broken off"));
    expect((await sendCall(server, "listSongs")).status).toBe(200);
    expect(await contentsOf(server.home)).toEqual({});
  });
});

describe("a mistake inside", () => {
  test("is answered as one, and the terminal is told", async () => {
    const host = makeHost(await tempFolder(), quietDisk());
    const broken = { ...host, listSongs: () => Promise.reject(new RangeError("a slip of ours")) };
    const server = await serveHome(broken);
    const reply = await sendCall(server, "listSongs");
    expect(reply.status).toBe(500);
    expect(problemOf(reply)).toMatchObject({ code: "bug" });
    expect(server.lines.join()).toContain("RangeError: a slip of ours");
  });
});

describe("closing", () => {
  test("frees the port, and may be asked for twice", async () => {
    const server = await serveHome();
    await Promise.all([server.close(), server.close()]);
    await expect(sendRaw(server.origin, { path: "/" })).rejects.toThrow("ECONNREFUSED");
  });

  test("is not held up by a browser that keeps a connection open", async () => {
    const server = await serveHome();
    const idle = connect({ host: "127.0.0.1", port: Number(new URL(server.origin).port) });
    await once(idle, "connect");
    // One round trip more, so that the server has surely seen the connection.
    await sendRaw(server.origin, { path: "/" });
    const ended = once(idle, "close");
    await server.close();
    await ended;
    expect(idle.destroyed).toBe(true);
  });

  test("lets a call that is under way end, and be saved", async () => {
    const home = await tempFolder();
    const host = makeHost(home, quietDisk());
    let arrived = (): void => undefined;
    const hasArrived = new Promise<void>((resolve) => {
      arrived = resolve;
    });
    let goOn = (): void => undefined;
    const mayGoOn = new Promise<void>((resolve) => {
      goOn = resolve;
    });
    const server = await serveHome({
      ...host,
      createSong: async (argument) => {
        arrived();
        await mayGoOn;
        return host.createSong(argument);
      },
    });
    const reply = sendCall(server, "createSong", creating);
    await hasArrived;
    const closed = server.close();
    goOn();
    expect((await reply).status).toBe(200);
    await closed;
    expect(Object.keys(await contentsOf(home))).toContain(join(home, "songbook", "gate-ten.txt"));
  });
});
