import type { BrowserWindow } from "electron";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { makeElectron } from "./electronStandIn.ts";

const stand = vi.hoisted(() => ({ electron: null as ReturnType<typeof makeElectron> | null }));
vi.mock("electron", () => ({
  get BrowserWindow() {
    return stand.electron?.BrowserWindow;
  },
}));
const { loadScreen, openWindow } = await import("../../../src-main/desktop/window.ts");

describe("the window", () => {
  let electron: ReturnType<typeof makeElectron>;
  beforeEach(() => {
    electron = makeElectron();
    stand.electron = electron;
  });

  // The security guide of Electron's documentation, points 2 to 6, 8 and 11.
  test("gives its page no Node, a sandbox and a world of its own", () => {
    openWindow("/built/preload.cjs", () => undefined);
    expect(electron.windows[0]?.options).toMatchObject({
      webPreferences: {
        preload: "/built/preload.cjs",
        sandbox: true,
        contextIsolation: true,
        nodeIntegration: false,
        nodeIntegrationInWorker: false,
        nodeIntegrationInSubFrames: false,
        webSecurity: true,
        allowRunningInsecureContent: false,
        webviewTag: false,
      },
    });
  });

  test("opens at 1280 by 800 and shrinks to 720 by 680", () => {
    openWindow("/built/preload.cjs", () => undefined);
    expect(electron.windows[0]?.options).toMatchObject({
      width: 1280,
      height: 800,
      minWidth: 720,
      minHeight: 680,
    });
  });

  // The same guide, points 12 to 14.
  test.each(["will-navigate", "will-frame-navigate", "will-redirect", "will-attach-webview"])(
    "stops %s",
    (event) => {
      openWindow("/built/preload.cjs", () => undefined);
      const preventDefault = vi.fn();
      electron.windows[0]?.webContents.emit(event, { preventDefault });
      expect(preventDefault).toHaveBeenCalledOnce();
    },
  );

  test("opens no other window", () => {
    openWindow("/built/preload.cjs", () => undefined);
    const answer = electron.windows[0]?.webContents.openHandler?.({ url: "https://example.org/" });
    expect(answer).toEqual({ action: "deny" });
  });

  test("is shown when its first picture is there, not before", () => {
    const onShown = vi.fn();
    openWindow("/built/preload.cjs", onShown);
    expect(electron.windows[0]?.options).toMatchObject({ show: false });
    expect(electron.windows[0]?.shown).toBe(false);
    electron.windows[0]?.emit("ready-to-show");
    expect(electron.windows[0]?.shown).toBe(true);
    expect(onShown).toHaveBeenCalledOnce();
  });

  test("loads our screen by our own scheme", async () => {
    const window: BrowserWindow = openWindow("/built/preload.cjs", () => undefined);
    await loadScreen(window);
    expect(electron.windows[0]?.loaded).toEqual(["shortslide://app/"]);
  });
});
