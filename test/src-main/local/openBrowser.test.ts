import { describe, expect, test } from "vitest";
import { type OpenAddress, openBrowser } from "../../../src-main/local/openBrowser.ts";

const address = "http://127.0.0.1:1234/#token=t";

const recorder = (): { readonly opened: string[]; readonly open: OpenAddress } => {
  const opened: string[] = [];
  return { opened, open: async (url) => void opened.push(url) };
};

describe("the browser", () => {
  test.each([
    { platform: "linux", env: { DISPLAY: ":0" } },
    { platform: "linux", env: { WAYLAND_DISPLAY: "wayland-1", CI: "" } },
    { platform: "darwin", env: {} },
    { platform: "win32", env: {} },
  ] as const)("is opened at the address on $platform with $env", async (desk) => {
    const { opened, open } = recorder();
    expect(await openBrowser(address, desk, open)).toBeNull();
    expect(opened).toEqual([address]);
  });

  test.each([
    [{ platform: "linux", env: {} }, "there is no display"],
    [{ platform: "linux", env: { DISPLAY: "" } }, "there is no display"],
    [{ platform: "darwin", env: { CI: "true" } }, "CI is set"],
  ] as const)("is left alone by %j, and why is said", async (desk, reason) => {
    const { opened, open } = recorder();
    expect(await openBrowser(address, desk, open)).toBe(reason);
    expect(opened).toEqual([]);
  });

  test("that cannot be opened is said and not fatal", async () => {
    const open = (): Promise<void> => Promise.reject(new Error("no program opens http"));
    expect(await openBrowser(address, { platform: "darwin", env: {} }, open)).toBe(
      "no program opens http",
    );
  });
});
