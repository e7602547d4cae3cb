import assert from "node:assert/strict";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { request } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import * as v from "valibot";
import { type LocalServer, startServer } from "../../src-main/local/server.ts";
import { realDisk } from "../../src-main/services/disk.ts";
import { makeHost, type OpenHost } from "../../src-main/services/makeHost.ts";
import { type Answer, type VerbName, verbNames, verbs } from "../../src-shared/host.ts";
import { firstPreferences, newSongSettings } from "../../src-shared/settings.ts";
import { type Area, makeArea } from "./area.ts";
import { jsonNear } from "./nearJson.ts";
import { textNear } from "./nearText.ts";
import { seedCharts } from "./seedCharts.ts";

/** What must never be read by way of the server. */
const SECRET = "the secret beside the folders";

type Call = {
  readonly kind: "call";
  readonly verb: string;
  readonly body: string;
  readonly method: string;
  /** Headers that differ from those of our own page; null leaves one out. */
  readonly headers: Readonly<Record<string, string | null>>;
};
type Request =
  | Call
  | { readonly kind: "get"; readonly path: string }
  | { readonly kind: "raw"; readonly text: string };

const ids = ["gate-ten", "tin-lamp", "none", "../secret", "..", ".", "con", "a/b", "", "\u0000"];
const anyId = fc.constantFrom(...ids);
const anyText = fc.oneof(
  fc.constantFrom(...seedCharts.slice(0, 4)),
  fc.string({ unit: "binary", maxLength: 40 }),
  fc.constantFrom("\r", "a\r\nb\rc\n", "\ufeffTitle: x", "\ud800", "", "\u0000"),
);
const anyTitle = fc.oneof(
  fc.constantFrom("Gate Ten", "Tin Lamp", "../../x", "CON", "..", "é".repeat(200), "a".repeat(200)),
  fc.string({ unit: "binary", maxLength: 30 }),
);
const settings = fc.constant(newSongSettings);

const goodArguments: Readonly<Partial<Record<VerbName, fc.Arbitrary<unknown>>>> = {
  readSong: fc.record({ id: anyId }),
  createSong: fc.record({ title: anyTitle, text: anyText, settings }),
  writeSong: fc.record({ id: anyId, text: anyText, settings, before: anyText }),
  removeSong: fc.record({ id: anyId }),
  restoreSong: fc.record({ ticket: anyId }),
  writePreferences: fc.constant(firstPreferences),
  writePatterns: fc.constantFrom(
    [],
    [{ name: "Mine", meter: "2/4", strokes: [{ picks: [], accent: false, damped: false }] }],
  ),
};

const oddHeaders: fc.Arbitrary<Call["headers"]> = fc.dictionary(
  fc.constantFrom("Origin", "Authorization", "Host", "Content-Type", "Transfer-Encoding"),
  fc.constantFrom(
    null,
    "",
    "null",
    "http://localhost",
    "https://evil.example",
    "Bearer",
    "Bearer AAAA",
    "evil.example",
    "127.0.0.1",
    "text/plain",
    "application/json; charset=utf-8",
    "application/jsonp",
  ),
  { maxKeys: 2 },
);

const goodCalls: fc.Arbitrary<Call> = fc.constantFrom(...verbNames).chain((verb) =>
  fc
    .record({
      argument: fc.oneof(
        { weight: 3, arbitrary: goodArguments[verb] ?? fc.constant(null) },
        { weight: 1, arbitrary: jsonNear(goodArguments[verb] ?? fc.constant(null)) },
      ),
      headers: fc.oneof(
        { weight: 4, arbitrary: fc.constant({}) },
        { weight: 1, arbitrary: oddHeaders },
      ),
    })
    .map(({ argument, headers }) => ({
      kind: "call" as const,
      verb,
      body: JSON.stringify({ argument }),
      method: "POST",
      headers,
    })),
);

const brokenCalls: fc.Arbitrary<Call> = fc.record({
  kind: fc.constant("call" as const),
  verb: fc.oneof(
    fc.constantFrom<string>(...verbNames),
    fc.constantFrom("constructor", "__proto__", "", "listSongs/", "../x"),
  ),
  body: textNear({
    seeds: ['{"argument":null}', '{"argument":{"id":"gate-ten"}}', "null", "[]"],
    scraps: [...'{}[]":,\\', '"argument"', '"__proto__"', "1e999", "\\u0000", "null"],
    piece: /"[^"]*"|[{}[\]:,]/g,
  }),
  method: fc.constantFrom("POST", "POST", "GET", "PUT", "DELETE", "OPTIONS", "HEAD"),
  headers: fc.oneof(fc.constant({}), oddHeaders),
});

const anyPath = textNear({
  seeds: [
    "/",
    "/assets/index-B4x_9-Qz.js",
    "/../secret.html",
    "/%2e%2e/secret.html",
    "//secret.html",
  ],
  scraps: ["..", "/", "%2f", "%5c", "\\", "%00", "%", "?", ".html", "secret.html", ";", "%c0%ae"],
  piece: /[/.%?]/g,
}).map((path) => `/${path.replaceAll(/[^!-~]/g, "")}`);

const rawRequests = textNear({
  seeds: [
    "GET / HTTP/1.1\r\nHost: HOST\r\n\r\n",
    'POST /call/createSong HTTP/1.1\r\nHost: HOST\r\nOrigin: ORIGIN\r\nContent-Type: application/json\r\nContent-Length: 17\r\n\r\n{"argument":null}',
    "POST /call/listSongs HTTP/1.1\r\nHost: HOST\r\nTransfer-Encoding: chunked\r\n\r\n5\r\nabcde\r\n0\r\n\r\n",
  ],
  scraps: [
    "\r\n",
    "HTTP/1.0",
    "Host: evil.example\r\n",
    "Content-Length: -1\r\n",
    "\u0000",
    " ",
    ":",
    "ffffffff\r\n",
  ],
  piece: /\r\n|[ :/]/g,
});

const anySession: fc.Arbitrary<readonly Request[]> = fc.array(
  fc.oneof(
    { weight: 8, arbitrary: goodCalls },
    { weight: 3, arbitrary: brokenCalls },
    { weight: 2, arbitrary: anyPath.map((path): Request => ({ kind: "get", path })) },
    { weight: 1, arbitrary: rawRequests.map((text): Request => ({ kind: "raw", text })) },
  ),
  { minLength: 1, maxLength: 10 },
);

type Reply = { readonly status: number; readonly text: string };

const send = (
  origin: string,
  path: string,
  method: string,
  headers: Record<string, string>,
  body: string,
): Promise<Reply> =>
  new Promise((resolve, reject) => {
    const { port } = new URL(origin);
    const sent = { ...headers };
    if (sent["Transfer-Encoding"] === undefined) {
      sent["Content-Length"] = `${Buffer.byteLength(body)}`;
    }
    const to = { host: "127.0.0.1", port, method, path, headers: sent, agent: false } as const;
    const call = request(to, (response) => {
      const chunks: Uint8Array[] = [];
      response.on("data", (chunk: Uint8Array) => chunks.push(chunk));
      response.on("end", () =>
        resolve({ status: response.statusCode ?? 0, text: Buffer.concat(chunks).toString("utf8") }),
      );
    });
    call.on("error", reject);
    call.end(body);
  });

/** What the server says to bytes that may be no HTTP at all, until it or they end. */
const sendBytes = (origin: string, text: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const { port, host } = new URL(origin);
    const socket = connect({ host: "127.0.0.1", port: Number(port) });
    const chunks: Uint8Array[] = [];
    socket.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    socket.on("close", () => resolve(Buffer.concat(chunks).toString("utf8")));
    socket.on("error", (error: NodeJS.ErrnoException) => {
      // The server may hang up on nonsense while it is still being sent.
      if (error.code !== "ECONNRESET" && error.code !== "EPIPE") {
        reject(error);
      }
    });
    socket.end(text.replaceAll("HOST", host).replaceAll("ORIGIN", origin));
  });

type Setting = {
  readonly server: LocalServer;
  readonly folder: string;
  readonly lines: string[];
  /** Which calls came as far as the host. */
  readonly served: string[];
  readonly moveIn: (host: OpenHost) => void;
};

/** One server for all cases; each case moves in with a home of its own. */
const openServer = async (): Promise<Setting> => {
  const folder = await mkdtemp(join(tmpdir(), "shortslide-fuzz-"));
  const screen = join(folder, "screen");
  await mkdir(join(screen, "assets"), { recursive: true });
  await writeFile(join(screen, "index.html"), "<!doctype html>");
  await writeFile(join(folder, "secret.html"), SECRET);
  const lines: string[] = [];
  const served: string[] = [];
  let host: OpenHost | null = null;
  const verbOf = (name: VerbName) => (argument: unknown) => {
    served.push(name);
    assert.ok(host, "no home yet");
    return host[name](argument);
  };
  const delegate = Object.fromEntries(verbNames.map((name) => [name, verbOf(name)]));
  const server = await startServer(delegate as OpenHost, screen, (line) => lines.push(line));
  const moveIn = (next: OpenHost): void => {
    host = next;
  };
  return { server, folder, lines, served, moveIn };
};

const isOurs = ({ origin, token }: LocalServer, sent: Readonly<Record<string, string>>): boolean =>
  sent["Origin"] === origin &&
  sent["Authorization"] === `Bearer ${token}` &&
  // Node's client puts its own host in the place of an empty one.
  (!sent["Host"] || `http://${sent["Host"]}` === origin);

const STATUSES: readonly number[] = [200, 400, 401, 403, 404, 405, 413, 415];

const checkAnswer = (verb: string, reply: Reply): Answer<unknown> | null => {
  assert.ok(STATUSES.includes(reply.status), `status ${reply.status}: ${reply.text.slice(0, 200)}`);
  if (reply.text === "") {
    return null;
  }
  const answer: Answer<unknown> = JSON.parse(reply.text);
  if (!answer.ok) {
    assert.match(answer.problem.says, /^\S/);
    assert.match(answer.problem.try, /^\S/);
    assert.notEqual(answer.problem.code, "bug", reply.text);
    return answer;
  }
  const name = verbNames.find((known) => known === verb);
  assert.ok(name !== undefined, `${verb} was answered`);
  v.parse(verbs[name].result, answer.value);
  return answer;
};

const tryCall = async ({ server, served }: Setting, call: Call): Promise<void> => {
  const ours = {
    Origin: server.origin,
    Authorization: `Bearer ${server.token}`,
    "Content-Type": "application/json",
  };
  const sent = Object.fromEntries(
    Object.entries({ ...ours, ...call.headers }).flatMap(([name, value]) =>
      value === null ? [] : [[name, value]],
    ),
  );
  const before = served.length;
  const isChunked = sent["Transfer-Encoding"] !== undefined;
  if (isChunked) {
    sent["Transfer-Encoding"] = "chunked";
  }
  const reply = await send(server.origin, `/call/${call.verb}`, call.method, sent, call.body);
  const answer = checkAnswer(call.verb, reply);
  if (!isOurs(server, sent) || call.method !== "POST") {
    assert.equal(served.length, before, "a stranger's call was served");
    assert.notEqual(reply.status, 200);
  }
  if (call.verb === "createSong" && answer?.ok) {
    const { id } = v.parse(verbs.createSong.result, answer.value);
    const read = JSON.stringify({ argument: { id } });
    const kept = await send(server.origin, "/call/readSong", "POST", ours, read);
    assert.deepEqual(JSON.parse(kept.text), answer, "a song is not kept as it was created");
    const asked = v.parse(verbs.createSong.argument, JSON.parse(call.body).argument);
    assert.equal(v.parse(verbs.createSong.result, answer.value).text, asked.text);
  }
};

const trySession = async (setting: Setting, session: readonly Request[]): Promise<void> => {
  const { server, folder, lines } = setting;
  const home = await mkdtemp(join(folder, "home-"));
  lines.length = 0;
  setting.moveIn(makeHost(home, { ...realDisk, log: (line) => lines.push(line) }));
  try {
    for (const one of session) {
      if (one.kind === "call") {
        await tryCall(setting, one);
      } else if (one.kind === "get") {
        const reply = await send(server.origin, one.path, "GET", {}, "");
        assert.ok(!reply.text.includes(SECRET), "the secret was read");
        assert.ok([200, 400, 403, 404].includes(reply.status), `status ${reply.status}`);
      } else {
        const said = await sendBytes(server.origin, one.text);
        assert.match(said, /^(?:HTTP\/1\.1 \d{3} [\s\S]*)?$/);
        assert.doesNotMatch(said, /^HTTP\/1\.1 5/);
      }
    }
    assert.deepEqual(
      lines.filter((line) => !line.includes("broken off")),
      [],
    );
  } finally {
    await rm(home, { recursive: true });
  }
};

let opened: Promise<Setting> | null = null;

/** Sessions of requests over HTTP to a real server: strangers served nothing, all answered in words. */
export const serviceArea: Area = makeArea("service", anySession, async (session) => {
  opened ??= openServer();
  await trySession(await opened, session);
});

/** Closes the server and takes its folder away. */
export const closeService = async (): Promise<void> => {
  const setting = await opened;
  opened = null;
  if (setting) {
    await setting.server.close();
    await rm(setting.folder, { recursive: true });
  }
};
