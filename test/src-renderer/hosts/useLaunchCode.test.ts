import { describe, expect, test } from "vitest";
import { takeToken } from "../../../src-renderer/hosts/takeToken.ts";
import { useLaunchCode } from "../../../src-renderer/hosts/useLaunchCode.ts";
import { serveHome } from "../../src-main/local/localLine.ts";

/** A tab with this address, whose fetch says where it comes from as a browser does. */
const tabAt = (address: string) => {
  const url = new URL(address);
  const kept = new Map<string, string>();
  return {
    location: { hash: url.hash, pathname: url.pathname, search: url.search },
    history: {
      replaceState: (_data: unknown, _unused: string, to?: string | URL | null) => {
        url.hash = new URL(String(to), url).hash;
      },
    },
    sessionStorage: {
      getItem: (name: string) => kept.get(name) ?? null,
      setItem: (name: string, value: string) => void kept.set(name, value),
    },
    fetch: (path: string | URL | Request, init?: RequestInit) =>
      fetch(new URL(String(path), url.origin), {
        ...init,
        headers: { ...init?.headers, Origin: url.origin },
      }),
    shown: () => url.href,
  };
};

describe("a tab that the launcher opened", () => {
  test("changes its code for a token of its own and shows neither", async () => {
    const server = await serveHome();
    const tab = tabAt(server.launchAddress());
    expect(await useLaunchCode(tab)).toBeNull();
    expect(tab.shown()).toBe(`${server.origin}/`);
    const token = takeToken({ ...tab, location: { ...tab.location, hash: "" } });
    expect(token).toMatch(/^[\w-]{43}$/);
    expect(token).not.toBe(server.token);
  });

  test("whose code someone else has used is told so", async () => {
    const server = await serveHome();
    const address = server.launchAddress();
    await useLaunchCode(tabAt(address));
    expect(await useLaunchCode(tabAt(address))).toEqual({
      says: "This address was used before.",
      advice: expect.stringContaining("Start Shortslide again."),
    });
  });

  test("with the printed address or none has nothing to change", async () => {
    const server = await serveHome();
    expect(await useLaunchCode(tabAt(server.address))).toBeNull();
    expect(await useLaunchCode(tabAt(`${server.origin}/#/songbook`))).toBeNull();
  });
});
