import { request } from "node:http";
import { onTestFinished } from "vitest";
import { type LocalServer, type Patience, startServer } from "../../../src-main/local/server.ts";
import { makeHost, type OpenHost } from "../../../src-main/services/makeHost.ts";
import { screenFixture } from "../screenFixture.ts";
import { tempFolder } from "../tempFolder.ts";
import { quietDisk } from "../testDisk.ts";

/** A real server over a fresh home, closed when the test has ended. */
export const serveHome = async (
  host?: OpenHost,
  patience?: Patience,
): Promise<LocalServer & { readonly home: string; readonly lines: readonly string[] }> => {
  const home = await tempFolder();
  const { log, lines } = quietDisk();
  const server = await startServer(
    host ?? makeHost(home, quietDisk()),
    await screenFixture(),
    log,
    patience,
  );
  onTestFinished(() => server.close());
  return { ...server, home, lines };
};

/** What came back over the wire. */
export type Reply = {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly text: string;
};

/** A request as an attacker would write it: path and headers go out as they are given. */
export type RawRequest = {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Uint8Array;
};

/** Sends a request as it stands, with no browser's rules in between. */
export const sendRaw = (origin: string, raw: RawRequest): Promise<Reply> =>
  new Promise((resolve, reject) => {
    const { port } = new URL(origin);
    const call = request(
      {
        host: "127.0.0.1",
        port,
        method: raw.method ?? "GET",
        path: raw.path,
        headers: raw.headers,
      },
      (response) => {
        const chunks: Uint8Array[] = [];
        response.on("data", (chunk: Uint8Array) => chunks.push(chunk));
        response.on("end", () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            text: Buffer.concat(chunks).toString("utf8"),
          }),
        );
      },
    );
    call.on("error", reject);
    call.end(raw.body);
  });

/** A call as our own page makes it; `changed` says what is different from it. */
export const sendCall = (
  { origin, token }: Pick<LocalServer, "origin" | "token">,
  verb: string,
  changed: Partial<RawRequest> = {},
): Promise<Reply> =>
  sendRaw(origin, {
    method: "POST",
    path: `/call/${verb}`,
    body: JSON.stringify({ argument: null }),
    ...changed,
    headers: {
      Origin: origin,
      Authorization: `Bearer ${token}`,
      "Content-Type": "application/json",
      ...changed.headers,
    },
  });
