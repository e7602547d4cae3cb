import { once } from "node:events";
import { writeFile } from "node:fs/promises";
import { connect, type Socket } from "node:net";
import { join } from "node:path";
import { describe, expect, onTestFinished, test, vi } from "vitest";
import { newSongSettings } from "../../../src-shared/settings.ts";
import { contentsOf } from "../tempFolder.ts";
import { sendCall, sendRaw, serveHome } from "./localLine.ts";

const song = { title: "Gate Ten", text: "Title: Gate Ten\n| D |\n", settings: newSongSettings };
const creating = JSON.stringify({ argument: song });
const quick = { headersMs: 300, requestMs: 600, idleMs: 300, lookMs: 50 };

type Line = { readonly socket: Socket; readonly heard: () => string };

/** A connection as an attacker's program opens it. */
const lineTo = (origin: string): Line => {
  const socket = connect({ host: "127.0.0.1", port: Number(new URL(origin).port) });
  onTestFinished(() => void socket.destroy());
  const chunks: string[] = [];
  socket.setEncoding("latin1");
  socket.on("data", (chunk: string) => chunks.push(chunk));
  // A connection that is cut off is what these tests are about; "close" tells of it as well.
  socket.on("error", (error) => chunks.push(`<${error.message}>`));
  return { socket, heard: () => chunks.join("") };
};

const lineGone = async ({ socket }: Line): Promise<void> => {
  if (!socket.closed) await once(socket, "close");
};

describe("an attacker who is slow", () => {
  test("with the headers is hung up on, and the server goes on", async () => {
    const server = await serveHome(undefined, quick);
    const line = lineTo(server.origin);
    line.socket.write(`POST /call/listSongs HTTP/1.1\r\nHost: ${new URL(server.origin).host}\r\n`);
    const drip = setInterval(() => line.socket.write("X-Slow: 1\r\n"), 40);
    await lineGone(line);
    clearInterval(drip);
    expect(line.heard()).toMatch(/^HTTP\/1\.1 408 |^<|^$/);
    expect((await sendCall(server, "listSongs")).status).toBe(200);
  });

  test("with the body is hung up on, and nothing is written", async () => {
    const server = await serveHome(undefined, quick);
    const line = lineTo(server.origin);
    line.socket.write(
      [
        "POST /call/createSong HTTP/1.1",
        `Host: ${new URL(server.origin).host}`,
        `Origin: ${server.origin}`,
        `Authorization: Bearer ${server.token}`,
        "Content-Type: application/json",
        `Content-Length: ${creating.length}`,
        "",
        "",
      ].join("\r\n"),
    );
    let at = 0;
    const drip = setInterval(() => {
      line.socket.write(creating.charAt(at));
      at += 1;
    }, 30);
    await lineGone(line);
    clearInterval(drip);
    expect(at).toBeLessThan(creating.length);
    expect((await sendCall(server, "listSongs")).status).toBe(200);
    expect(await contentsOf(server.home)).toEqual({});
  });

  test("and says nothing at all is hung up on", async () => {
    const server = await serveHome(undefined, quick);
    const line = lineTo(server.origin);
    await once(line.socket, "connect");
    await lineGone(line);
    expect(line.socket.destroyed).toBe(true);
  });
});

describe("an attacker with many connections", () => {
  test("gets no more than 128, and when they are gone the page is served again", async () => {
    const server = await serveHome();
    const lines = Array.from({ length: 200 }, () => lineTo(server.origin));
    await vi.waitFor(
      () => expect(lines.filter(({ socket }) => socket.closed).length).toBeGreaterThanOrEqual(72),
      { timeout: 20_000 },
    );
    expect(lines.filter(({ socket }) => !socket.closed).length).toBeLessThanOrEqual(128);
    for (const { socket } of lines) socket.destroy();
    await Promise.all(lines.map(lineGone));
    await vi.waitFor(async () => expect((await sendCall(server, "listSongs")).status).toBe(200), {
      timeout: 20_000,
    });
  });
});

// Shapes by which one request is taken for two: RFC 9112, section 11.2 (request smuggling).
const headed = (origin: string, token: string, more: readonly string[], body: string): string =>
  [
    "POST /call/listSongs HTTP/1.1",
    `Host: ${new URL(origin).host}`,
    `Origin: ${origin}`,
    `Authorization: Bearer ${token}`,
    "Content-Type: application/json",
    ...more,
    "",
    body,
  ].join("\r\n");

const listing = '{"argument":null}';
const inside = "POST /call/createSong HTTP/1.1\r\n\r\n";

describe("an attacker who hides a request in another", () => {
  test.each([
    [
      "a length and chunks",
      ["Content-Length: 6", "Transfer-Encoding: chunked"],
      `0\r\n\r\n${inside}`,
    ],
    ["two lengths", ["Content-Length: 17", "Content-Length: 90"], `${listing}${inside}`],
    ["a length that is no number", ["Content-Length: 17x"], listing],
    ["a signed length", ["Content-Length: +17"], listing],
    ["an unknown coding", ["Transfer-Encoding: xchunked"], `0\r\n\r\n${inside}`],
    [
      "chunks and then something else",
      ["Transfer-Encoding: chunked, identity"],
      `0\r\n\r\n${inside}`,
    ],
    ["a chunk without a size", ["Transfer-Encoding: chunked"], `zz\r\n${inside}`],
    ["a space before the colon", ["Content-Length : 17"], listing],
    ["a folded header", ["Transfer-Encoding:", " chunked", "Content-Length: 17"], listing],
    ["a line break in a header", ["X-A: 1\rContent-Length: 90", "Content-Length: 17"], listing],
    ["a NUL in a header", ["X-A: \0", "Content-Length: 17"], listing],
  ])("by %s is turned away, and nothing is written", async (_how, more, body) => {
    const server = await serveHome(undefined, quick);
    const line = lineTo(server.origin);
    line.socket.write(headed(server.origin, server.token, more, body));
    await lineGone(line);
    expect(line.heard()).toMatch(/^HTTP\/1\.1 400 /);
    expect(line.heard().match(/HTTP\/1\.1 /g)).toHaveLength(1);
    expect((await sendCall(server, "listSongs")).status).toBe(200);
    expect(await contentsOf(server.home)).toEqual({});
  });

  test("who sends headers without end is turned away", async () => {
    const server = await serveHome(undefined, quick);
    const line = lineTo(server.origin);
    line.socket.write(headed(server.origin, server.token, [`X-Long: ${"x".repeat(64_000)}`], ""));
    await lineGone(line);
    expect(line.heard()).toMatch(/^HTTP\/1\.1 431 /);
  });

  test("who names two hosts gets in by neither order with a foreign one first", async () => {
    const server = await serveHome(undefined, quick);
    const line = lineTo(server.origin);
    const host = `Host: ${new URL(server.origin).host}`;
    line.socket.write(
      `GET / HTTP/1.1\r\nHost: evil.example\r\n${host}\r\nConnection: close\r\n\r\n`,
    );
    await lineGone(line);
    expect(line.heard()).toMatch(/^HTTP\/1\.1 (?:400|403) /);
  });
});

describe("an attacker with a song's name", () => {
  const names = [
    "../preferences",
    "..%2fpreferences",
    "%2e%2e%2fpreferences",
    "%252e%252e%252fpreferences",
    "..\\preferences",
    "..\u2215preferences",
    "songbook/../../preferences",
    "/etc/passwd",
    "preferences\0",
    "C:\\preferences",
    ".versions",
    ".removed",
    "con",
    "...",
  ];

  test.each(names)("as %j reaches no file, by any verb", async (id) => {
    const server = await serveHome();
    await writeFile(join(server.home, "preferences.txt"), "Title: a secret\n");
    const before = await contentsOf(server.home);
    const asked = {
      readSong: { id },
      removeSong: { id },
      mendSong: { id },
      restoreSong: { ticket: id },
      listVersions: { id },
      readVersion: { id, version: id },
      writeSong: { id, text: "| G |\n", settings: newSongSettings, before: "Title: a secret\n" },
    };
    for (const [verb, argument] of Object.entries(asked)) {
      const reply = await sendCall(server, verb, { body: JSON.stringify({ argument }) });
      const answer = JSON.parse(reply.text);
      const nothing = answer.ok === true && JSON.stringify(answer.value) === "[]";
      expect(nothing || answer.ok === false).toBe(true);
      expect(reply.text).not.toContain("a secret");
    }
    expect(await contentsOf(server.home)).toEqual(before);
  });
});

describe("an attacker with JSON", () => {
  test.each(['{"__proto__":{"argument":null}}', '{"constructor":{"prototype":{"argument":null}}}'])(
    "who hides the argument in %s is told that the call cannot be read",
    async (body) => {
      const reply = await sendCall(await serveHome(), "listSongs", { body });
      expect(reply.status).toBe(400);
    },
  );

  test("who sends keys that would change every object changes none, and none is kept", async () => {
    const server = await serveHome();
    const dirty = creating
      .replace('"settings":{', '"settings":{"__proto__":{"dirty":1},')
      .replace(
        '"plan":{',
        '"plan":{"constructor":{"prototype":{"dirty":1}},"__proto__":{"dirty":1},',
      );
    expect(dirty.match(/dirty/g)).toHaveLength(3);
    const reply = await sendCall(server, "createSong", { body: dirty });
    expect(reply.status).toBe(200);
    expect(reply.text).not.toContain("dirty");
    expect("dirty" in {}).toBe(false);
    expect(Object.values(await contentsOf(server.home)).join("")).not.toContain("dirty");
  });

  test("who nests it a hundred thousand deep is answered, and the server goes on", async () => {
    const server = await serveHome();
    const body = `{"argument":${"[".repeat(100_000)}${"]".repeat(100_000)}}`;
    const reply = await sendCall(server, "readSong", { body });
    expect(JSON.parse(reply.text)).toMatchObject({ ok: false });
    expect((await sendCall(server, "listSongs")).status).toBe(200);
  });
});

describe("the browser's command line", () => {
  const launch = (origin: string, code: string, headers = {}) =>
    sendRaw(origin, {
      method: "POST",
      path: "/launch",
      headers: { Origin: origin, Authorization: `Launch ${code}`, ...headers },
    });
  const codeOf = (address: string): string =>
    /^http:\/\/127\.0\.0\.1:\d+\/#launch=(\S+)$/.exec(address)?.[1] ?? "";
  const callWith = (server: { readonly origin: string }, token: string) =>
    sendCall({ origin: server.origin, token }, "listSongs");

  test("bears a code, never a token; the code is good once, for a token of the tab's own", async () => {
    const server = await serveHome();
    const address = server.launchAddress();
    expect(address).not.toContain(server.token);
    const code = codeOf(address);
    expect((await callWith(server, code)).status).toBe(401);
    const { value: token } = JSON.parse((await launch(server.origin, code)).text);
    expect(token).not.toBe(server.token);
    expect((await callWith(server, token)).status).toBe(200);
  });

  test("that someone else has read opens nothing twice: what the first one got is taken back", async () => {
    const server = await serveHome();
    const code = codeOf(server.launchAddress());
    const { value: stolen } = JSON.parse((await launch(server.origin, code)).text);
    const second = await launch(server.origin, code);
    expect(second.status).toBe(401);
    expect(JSON.parse(second.text).problem).toMatchObject({
      code: "refused",
      says: "This address was used before.",
    });
    expect((await callWith(server, stolen)).status).toBe(401);
    expect((await callWith(server, server.token)).status).toBe(200);
  });

  test.each([
    ["another origin", { Origin: "https://evil.example" }, 403],
    ["no code", { Authorization: "Launch " }, 401],
    ["the printed token's scheme", { Authorization: "Bearer x" }, 401],
    ["a rebound name", { Host: "evil.example" }, 403],
  ] as const)("is no way in for %s", async (_who, headers, status) => {
    const server = await serveHome();
    const code = codeOf(server.launchAddress());
    expect((await launch(server.origin, code, headers)).status).toBe(status);
    expect((await launch(server.origin, code)).status).toBe(200);
  });
});
