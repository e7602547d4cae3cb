import { describe, expect, test } from "vitest";
import { type TokenPlaces, takeToken } from "../../../src-renderer/hosts/takeToken.ts";

/** A browser's tab, of which an address' fragment and the tab's own memory are looked at. */
const tabAt = (address: string): TokenPlaces & { readonly address: () => string } => {
  let url = new URL(address);
  const kept = new Map<string, string>();
  return {
    get location() {
      return { hash: url.hash, pathname: url.pathname, search: url.search };
    },
    history: {
      replaceState: (_data, _unused, next) => {
        url = new URL(String(next), url);
      },
    },
    sessionStorage: {
      getItem: (name) => kept.get(name) ?? null,
      setItem: (name, value) => void kept.set(name, value),
    },
    address: () => url.href,
  };
};

describe("the token", () => {
  test("is taken out of the address and kept for a reload", () => {
    const tab = tabAt("http://127.0.0.1:1234/?x=1#token=abc_-9");
    expect(takeToken(tab)).toBe("abc_-9");
    expect(tab.address()).toBe("http://127.0.0.1:1234/?x=1");
    expect(takeToken(tab)).toBe("abc_-9");
  });

  test("of a later start takes the place of the one kept", () => {
    const tab = tabAt("http://127.0.0.1:1234/#token=old");
    takeToken(tab);
    tab.history.replaceState(null, "", "/#token=new");
    expect(takeToken(tab)).toBe("new");
  });

  test.each(["", "#", "#token=", "#/songbook", "#token=a b", "#other=abc"])(
    "is empty, and the address left alone, where the fragment is %j",
    (fragment) => {
      const tab = tabAt(`http://127.0.0.1:1234/${fragment}`);
      const before = tab.address();
      expect(takeToken(tab)).toBe("");
      expect(tab.address()).toBe(before);
    },
  );
});
