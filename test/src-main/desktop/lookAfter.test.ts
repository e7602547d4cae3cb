import type { BrowserWindow } from "electron";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { makeElectron } from "./electronStandIn.ts";

const stand = vi.hoisted(() => ({ electron: null as ReturnType<typeof makeElectron> | null }));
vi.mock("electron", () => ({
  get BrowserWindow() {
    return stand.electron?.BrowserWindow;
  },
}));
const { openWindow } = await import("../../../src-main/desktop/window.ts");
const { CRASH_AGAIN_MS, lookAfter } = await import("../../../src-main/desktop/lookAfter.ts");

describe("a window that is looked after", () => {
  let electron: ReturnType<typeof makeElectron>;
  let window: BrowserWindow;
  let nowMs: number;
  const lines: string[] = [];
  let saved: () => void;

  beforeEach(() => {
    electron = makeElectron();
    stand.electron = electron;
    nowMs = 40_000;
    lines.length = 0;
    window = openWindow("/built/preload.cjs", () => undefined);
    lookAfter(window, {
      dialog: electron.dialog as unknown as Electron.Dialog,
      quit: () => electron.app.quit(),
      log: (line) => void lines.push(line),
      nowMs: () => nowMs,
      saved: () =>
        new Promise((resolve) => {
          saved = resolve;
        }),
    });
    electron.asked.length = 0;
  });
  const crash = (): void => {
    electron.windows[0]?.webContents.emit(
      "render-process-gone",
      {},
      {
        reason: "oom",
        exitCode: 5,
      },
    );
  };

  test("loads its screen again when that has crashed, and the log says so", () => {
    crash();
    expect(electron.asked).toEqual(["reload"]);
    expect(lines).toEqual(["the screen stopped working (oom, 5)"]);
  });

  test("asks where it crashes again within a minute, and not where it does so later", async () => {
    crash();
    nowMs += CRASH_AGAIN_MS;
    crash();
    expect(electron.asked).toEqual(["reload", "reload"]);
    nowMs += CRASH_AGAIN_MS - 1;
    crash();
    await vi.waitFor(() =>
      expect(electron.asked).toEqual(["reload", "reload", "asked what to do", "quit"]),
    );
  });

  test("that has something unsaved is closed again when that is saved, then asks, and stays", async () => {
    window.close();
    expect(electron.asked).toEqual(["close"]);
    saved();
    await vi.waitFor(() =>
      expect(electron.asked).toEqual(["close", "close", "asked whether to stay"]),
    );
  });

  test("goes without saving where the player says so", async () => {
    electron.dialog.stays = 1;
    window.close();
    saved();
    await vi.waitFor(() => expect(electron.asked.at(-1)).toBe("let go"));
  });

  test("asks at once where the page is only loaded again", () => {
    electron.windows[0]?.webContents.emit("will-prevent-unload", { preventDefault: vi.fn() });
    expect(electron.asked).toEqual(["asked whether to stay"]);
  });
});
