import type { Protocol } from "electron";
import { describe, expect, test } from "vitest";
import { serveScreen } from "../../../src-main/desktop/protocol.ts";
import { screenHeaders } from "../../../src-main/services/screenHeaders.ts";
import { page, screenFixture, secret, waysOut } from "../screenFixture.ts";
import { tempFolder } from "../tempFolder.ts";

type Ask = (url: string, method?: string) => Promise<Response>;

/** Stands in for Electron's protocol module: hands requests to whoever handles our scheme. */
const serving = (folder: string): Ask => {
  const handlers = new Map<string, Parameters<Protocol["handle"]>[1]>();
  serveScreen({ handle: (scheme, handler) => void handlers.set(scheme, handler) }, folder);
  return async (url, method = "GET") => {
    const handler = handlers.get("shortslide");
    if (handler === undefined) {
      throw new Error("no one handles the scheme");
    }
    return handler(new Request(url, { method }));
  };
};

describe("our own scheme", () => {
  test("gives the page with its type and every header of the screen", async () => {
    const answer = await serving(await screenFixture())("shortslide://app/");
    expect(answer.status).toBe(200);
    expect(await answer.text()).toBe(page);
    expect(answer.headers.get("content-type")).toBe("text/html; charset=utf-8");
    for (const [name, value] of Object.entries(screenHeaders)) {
      expect(answer.headers.get(name)).toBe(value);
    }
  });

  test.each(waysOut)("gives nothing else for %j, and still the headers", async (path) => {
    const answer = await serving(await screenFixture())(`shortslide://app${path}`);
    expect(answer.status).toBe(404);
    expect(await answer.text()).not.toContain(secret);
    expect(answer.headers.get("content-security-policy")).toContain("default-src 'none'");
  });

  test("gives nothing under another host, and nothing but reading", async () => {
    const ask = serving(await screenFixture());
    expect((await ask("shortslide://other/")).status).toBe(404);
    expect((await ask("shortslide://app/", "POST")).status).toBe(405);
  });

  test("says what to do where the screen is not built", async () => {
    const answer = await serving(await tempFolder())("shortslide://app/");
    expect(answer.status).toBe(404);
    expect(await answer.text()).toContain("npm run build");
  });
});
