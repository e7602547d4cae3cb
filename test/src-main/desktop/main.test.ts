import { mkdir, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { channelOf, FILES_HANDED, verbNames } from "../../../src-shared/host.ts";
import { firstPreferences } from "../../../src-shared/settings.ts";
import { tempFolder } from "../tempFolder.ts";
import { makeElectron } from "./electronStandIn.ts";

const stand = vi.hoisted(() => ({ electron: null as ReturnType<typeof makeElectron> | null }));
vi.mock("electron", () => {
  const names = [
    "app",
    "BrowserWindow",
    "Menu",
    "dialog",
    "ipcMain",
    "protocol",
    "session",
  ] as const;
  const exports = {};
  for (const name of names) {
    Object.defineProperty(exports, name, { enumerable: true, get: () => stand.electron?.[name] });
  }
  return exports;
});

describe("the desktop program", () => {
  let electron: ReturnType<typeof makeElectron>;
  let home: string;
  const signals = ["SIGINT", "SIGTERM"] as const;
  const listeners = signals.map((signal) => [signal, process.listeners(signal)] as const);

  beforeEach(async () => {
    electron = makeElectron();
    stand.electron = electron;
    home = join(await tempFolder(), "home");
    vi.stubEnv("SHORTSLIDE_HOME", home);
    vi.resetModules();
  });
  afterEach(() => {
    vi.unstubAllEnvs();
    for (const [signal, before] of listeners) {
      process.removeAllListeners(signal);
      for (const listener of before) {
        process.on(signal, listener);
      }
    }
  });
  const boot = async (): Promise<void> => {
    await import("../../../src-main/desktop/main.ts");
  };

  test("is alone, sandboxed and has its scheme before it is ready, and its doors before its window", async () => {
    await boot();
    expect(electron.asked).toEqual([
      `path userData ${join(home, "desktop")}`,
      "lock",
      "sandbox",
      "privileged shortslide",
      "when ready",
    ]);
    electron.asked.length = 0;
    await electron.becomeReady();
    expect(electron.asked).toEqual([
      "handle shortslide",
      "permission requests",
      "permission checks",
      "device permissions",
      "menu",
      "window",
    ]);
    expect([...electron.line.handlers.keys()]).toEqual(verbNames.map(channelOf));
  });

  test("ends at once where another one is running, without a window", async () => {
    electron.app.lock = false;
    await boot();
    await electron.becomeReady();
    expect(electron.asked.at(-1)).toBe("quit");
    expect(electron.windows).toEqual([]);
  });

  test("brings its window forward when it is started a second time", async () => {
    await boot();
    await electron.becomeReady();
    const [window] = electron.windows;
    Object.assign(window ?? {}, { minimized: true });
    electron.app.emit("second-instance", {}, ["electron", "."], home);
    expect(electron.windows).toHaveLength(1);
    expect(window).toMatchObject({ minimized: false, focused: 1 });
  });

  const filesTaken = async (): Promise<unknown> => {
    const frame = electron.windows[0]?.webContents.mainFrame ?? null;
    return electron.line.invoke(frame, channelOf("takeFiles"), null);
  };
  const handed = (...names: readonly string[]): unknown => ({
    ok: true,
    value: names.map((name) => ({ name, base64: Buffer.from(`in ${name}`).toString("base64") })),
  });
  const putFiles = async (...names: readonly string[]): Promise<string> => {
    const folder = await tempFolder();
    await Promise.all(names.map((name) => writeFile(join(folder, name), `in ${name}`)));
    return folder;
  };

  test("has the files of its own start ready for the screen, once, and no other arguments", async () => {
    const folder = await putFiles("three.shortslide", "notes.md");
    const { argv } = process;
    process.argv = ["electron", ".", join(folder, "notes.md"), join(folder, "three.shortslide")];
    await boot();
    process.argv = argv;
    await electron.becomeReady();
    expect(await filesTaken()).toEqual(handed("three.shortslide"));
    expect(await filesTaken()).toEqual(handed());
  });

  test("takes a file of a second start from that start's folder, and tells its screen", async () => {
    const folder = await putFiles("tune.abc");
    await boot();
    await electron.becomeReady();
    electron.app.emit("second-instance", {}, ["electron", ".", "--flag", "tune.abc"], folder);
    expect(electron.windows[0]?.webContents.sent).toEqual([FILES_HANDED]);
    expect(electron.windows[0]).toMatchObject({ focused: 1 });
    expect(await filesTaken()).toEqual(handed("tune.abc"));
  });

  test("takes a file that the system opens, before it is ready and after", async () => {
    const folder = await putFiles("one.shortslide", "two.shortslide");
    const preventDefault = vi.fn();
    await boot();
    electron.app.emit("open-file", { preventDefault }, join(folder, "one.shortslide"));
    await electron.becomeReady();
    electron.app.emit("open-file", { preventDefault }, join(folder, "two.shortslide"));
    expect(preventDefault).toHaveBeenCalledTimes(2);
    expect(await filesTaken()).toEqual(handed("one.shortslide", "two.shortslide"));
  });

  test("says in words that a file it was handed is gone, and goes on without it", async () => {
    const folder = await putFiles("here.shortslide");
    await boot();
    await electron.becomeReady();
    const args = ["electron", ".", "gone.shortslide", "here.shortslide"];
    electron.app.emit("second-instance", {}, args, folder);
    expect(await filesTaken()).toMatchObject({ ok: false, problem: { code: "disk" } });
    expect(await filesTaken()).toEqual(handed("here.shortslide"));
  });

  test("says on stdout that there is a window, for whoever started it", async () => {
    const write = vi.spyOn(process.stdout, "write").mockReturnValue(true);
    await boot();
    await electron.becomeReady();
    expect(write).not.toHaveBeenCalled();
    electron.windows[0]?.emit("ready-to-show");
    expect(write.mock.calls).toEqual([["Shortslide's window is open.\n"]]);
    write.mockRestore();
  });

  test("ends only when what its page was saving is on the disk", async () => {
    await boot();
    await electron.becomeReady();
    const frame = electron.windows[0]?.webContents.mainFrame ?? null;
    const saving = electron.line.invoke(frame, channelOf("writePreferences"), firstPreferences);
    const preventDefault = vi.fn();
    electron.app.emit("will-quit", { preventDefault });
    expect(preventDefault).toHaveBeenCalledOnce();
    expect(electron.asked).not.toContain("quit");

    expect(await saving).toEqual({ ok: true, value: null });
    await vi.waitFor(() => expect(electron.asked).toContain("quit"));
    electron.app.emit("will-quit", { preventDefault });
    expect(preventDefault).toHaveBeenCalledOnce();
  });

  test("opens its window although its own folder cannot be used, and says so", async () => {
    await mkdir(dirname(home), { recursive: true });
    await writeFile(home, "a file where the folder should be");
    const write = vi.spyOn(process.stderr, "write").mockReturnValue(true);
    await boot();
    await electron.becomeReady();
    expect(electron.windows).toHaveLength(1);
    expect(write.mock.calls.join()).toContain("cannot be used");
    write.mockRestore();
  });
});
