import { describe, expect, test } from "vitest";
import { type HostWindow, pickHost } from "../../../src-renderer/hosts/pickHost.ts";
import { BRIDGE_NAME } from "../../../src-shared/host.ts";
import { firstPreferences } from "../../../src-shared/settings.ts";
import { serveHome } from "../../src-main/local/localLine.ts";
import { pageFetch } from "./pageFetch.ts";

const pageAt = (address: string): HostWindow => {
  const { origin, hash, pathname, search } = new URL(address);
  return {
    location: { origin, hash, pathname, search },
    history: { replaceState: () => undefined },
    sessionStorage: { getItem: () => null, setItem: () => undefined },
    fetch: pageFetch(origin),
  };
};

describe("a page's host", () => {
  test("is the local server at the address that it printed", async () => {
    const { address } = await serveHome();
    expect(await pickHost(pageAt(address)).readPreferences(null)).toEqual({
      ok: true,
      value: firstPreferences,
    });
  });

  test("is the desktop's bridge where there is one", async () => {
    const bridge = { listSongs: async () => ({ ok: true, value: [] }) };
    const page = { ...pageAt("http://127.0.0.1:1/"), [BRIDGE_NAME]: bridge };
    expect(await pickHost(page).listSongs(null)).toEqual({ ok: true, value: [] });
  });
});
