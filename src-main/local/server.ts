import { once } from "node:events";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { type Answer, type VerbName, verbNames } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { failed, given } from "../services/answer.ts";
import type { OpenHost } from "../services/makeHost.ts";
import { screenHeaders } from "../services/screenHeaders.ts";
import { type Keys, makeKeys } from "./keys.ts";
import { readBody } from "./readBody.ts";
import { sendStaticFile } from "./staticFiles.ts";

/**
 * The screen and the table of verbs for a browser on this machine.
 *
 * Who may call: the page that was opened with the address this server made. Its token stands in
 * the address' fragment, which a browser sends to no one; the page takes it from there, keeps it
 * for its tab (so that a reload works) and sends it as a header with every call. The address on the
 * browser's command line has a code instead that is good once (keys.ts). A cookie would be
 * simpler to the page but less safe: cookies are shared by all ports of 127.0.0.1, and go along
 * with requests that other pages make. The Host check keeps out names that are rebound to this
 * address, the Origin check other pages, and no CORS header is ever sent.
 */
export type LocalServer = {
  /** With the token: for the terminal alone. */
  readonly address: string;
  /** With a code that is good once: for the browser's command line, which others can read. */
  readonly launchAddress: () => string;
  readonly origin: string;
  readonly token: string;
  /** Takes no more requests, lets those under way end, and frees the port. */
  readonly close: () => Promise<void>;
};

const LOOPBACK = "127.0.0.1";
const MAX_BODY_BYTES = 8 * 1024 * 1024;
const MOST_CONNECTIONS = 128;
const LAST_WORD_MS = 5_000;
const CALL_PATH = "/call/";
const LAUNCH_PATH = "/launch";

const send = (response: ServerResponse, status: number, answer: Answer<unknown>): void => {
  const body = JSON.stringify(answer);
  response.writeHead(status, {
    "Content-Type": "application/json; charset=utf-8",
    "Content-Length": Buffer.byteLength(body),
    "Cache-Control": "no-store",
  });
  response.end(body);
};

const OPEN_AGAIN = words.host.openAgain;
const NOT_THIS_START = words.host.notThisStart;
const OUR_MISTAKE = words.host.reload;

const verbOf = (path: string): VerbName | undefined =>
  verbNames.find((name) => path === `${CALL_PATH}${name}`);

const parsed = (text: string): { readonly argument: unknown } | null => {
  try {
    const body: unknown = JSON.parse(text);
    return typeof body === "object" && body !== null && "argument" in body ? body : null;
  } catch (error) {
    if (error instanceof SyntaxError) {
      return null;
    }
    throw error;
  }
};

type Setting = {
  readonly host: OpenHost;
  readonly screenFolder: string;
  readonly keys: Keys;
  readonly origin: string;
};

/** Whether a request comes from our own page; else it is answered with why not. */
const fromOurPage = (
  origin: string,
  request: IncomingMessage,
  response: ServerResponse,
): boolean => {
  if (request.method !== "POST") {
    response.setHeader("Allow", "POST");
    send(response, 405, failed("refused", words.host.byPost, OUR_MISTAKE));
    return false;
  }
  if (request.headers.origin !== origin) {
    send(response, 403, failed("refused", words.host.notThisPage, OPEN_AGAIN));
    return false;
  }
  return true;
};

/** Exchanges a launch code, which is the whole Authorization header, for a token. */
const answerLaunch = (
  { keys, origin }: Setting,
  request: IncomingMessage,
  response: ServerResponse,
): void => {
  if (!fromOurPage(origin, request, response)) {
    return;
  }
  const [, code = ""] = /^Launch (\S+)$/u.exec(request.headers.authorization ?? "") ?? [];
  const redeemed = keys.redeem(code);
  if (redeemed.kind === "token") {
    send(response, 200, given(redeemed.token));
    return;
  }
  const { used, usedTwice, expired, openPrinted } = words.opening;
  const why = {
    used: failed("refused", used, usedTwice),
    expired: failed("refused", expired, openPrinted),
    unknown: failed("refused", NOT_THIS_START, OPEN_AGAIN),
  };
  send(response, 401, why[redeemed.kind]);
};

const answerCall = async (
  { host, keys, origin }: Setting,
  name: VerbName,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> => {
  if (!fromOurPage(origin, request, response)) {
    return;
  }
  if (!keys.open(request.headers.authorization)) {
    return send(response, 401, failed("refused", NOT_THIS_START, OPEN_AGAIN));
  }
  if (!/^application\/json(?:\s*;|$)/iu.test(request.headers["content-type"] ?? "")) {
    return send(response, 415, failed("bad-argument", words.host.inJson, OUR_MISTAKE));
  }
  const body = await readBody(request, MAX_BODY_BYTES);
  if (body.kind === "too-long") {
    response.setHeader("Connection", "close");
    return send(response, 413, failed("bad-argument", words.host.tooMuch, words.host.tooMuchTry));
  }
  const call = body.kind === "text" ? parsed(body.text) : null;
  if (call === null) {
    return send(response, 400, failed("bad-argument", words.host.unreadable, OUR_MISTAKE));
  }
  send(response, 200, await host[name](call.argument));
};

const answerRequest = async (
  setting: Setting,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> => {
  for (const [name, value] of Object.entries(screenHeaders)) {
    response.setHeader(name, value);
  }
  if (`http://${request.headers.host}` !== setting.origin) {
    return send(response, 403, failed("refused", words.host.otherAddress, OPEN_AGAIN));
  }
  const [path = ""] = (request.url ?? "").split("?", 1);
  if (path === LAUNCH_PATH) {
    return answerLaunch(setting, request, response);
  }
  const name = verbOf(path);
  if (name !== undefined) {
    return answerCall(setting, name, request, response);
  }
  if (path.startsWith(CALL_PATH)) {
    return send(response, 404, failed("not-found", words.host.noCall, OUR_MISTAKE));
  }
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.setHeader("Allow", "GET, HEAD");
    return send(response, 405, failed("refused", words.host.onlyRead, OUR_MISTAKE));
  }
  if (!(await sendStaticFile(setting.screenFolder, path, request, response))) {
    send(response, 404, failed("not-found", words.host.noPage, OPEN_AGAIN));
  }
};

/** Browsers keep connections open without a request; only requests are waited for. */
const close = async (server: Server, underWay: ReadonlySet<Promise<unknown>>): Promise<void> => {
  const closed = once(server, "close");
  server.close();
  const lastWord = setTimeout(() => server.closeAllConnections(), LAST_WORD_MS);
  await Promise.all(underWay);
  server.closeAllConnections();
  await closed;
  clearTimeout(lastWord);
};

/** How long a connection may take, in milliseconds: to its headers, to its end, and without a word. */
export type Patience = {
  readonly headersMs: number;
  readonly requestMs: number;
  readonly idleMs: number;
  /** How often the times are looked at. */
  readonly lookMs: number;
};

const usualPatience: Patience = {
  headersMs: 10_000,
  requestMs: 30_000,
  idleMs: 5_000,
  lookMs: 5_000,
};

/** Starts the server on a free port of 127.0.0.1. */
export const startServer = async (
  host: OpenHost,
  screenFolder: string,
  log: (line: string) => void,
  patience: Patience = usualPatience,
): Promise<LocalServer> => {
  const keys = makeKeys();
  const server = createServer({
    requestTimeout: patience.requestMs,
    headersTimeout: patience.headersMs,
    keepAliveTimeout: patience.idleMs,
    connectionsCheckingInterval: patience.lookMs,
  });
  // One browser needs six connections; a flood is turned away before it takes the machine's files.
  server.maxConnections = MOST_CONNECTIONS;
  server.maxHeadersCount = 100;
  server.listen({ host: LOOPBACK, port: 0, exclusive: true });
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  const origin = `http://${LOOPBACK}:${port}`;
  const setting: Setting = { host, screenFolder, keys, origin };

  const underWay = new Set<Promise<unknown>>();
  let closing: Promise<void> | null = null;

  server.on("request", (request, response) => {
    const ended = once(response, "close").finally(() => underWay.delete(ended));
    underWay.add(ended);
    answerRequest(setting, request, response).catch((error: unknown) => {
      if (request.errored !== null) {
        // The browser went away in the middle; there is no one to answer.
        log(`a request was broken off: ${request.errored.message}`);
        return;
      }
      log(error instanceof Error ? (error.stack ?? error.message) : String(error));
      if (!response.headersSent) {
        send(response, 500, failed("bug", words.host.wentWrong, OUR_MISTAKE));
      }
    });
  });

  return {
    address: `${origin}/#token=${keys.token}`,
    launchAddress: () => `${origin}/#launch=${keys.makeCode()}`,
    origin,
    token: keys.token,
    close: () => {
      closing ??= close(server, underWay);
      return closing;
    },
  };
};
