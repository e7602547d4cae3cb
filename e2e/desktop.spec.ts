import { existsSync, readFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { _electron, type ElectronApplication, expect, type Page, test } from "@playwright/test";
import { BRIDGE_NAME, verbNames } from "../src-shared/host.ts";

const root = join(import.meta.dirname, "..");
const electronFolder = join(root, "node_modules", "electron");
const { DISPLAY, WAYLAND_DISPLAY, ELECTRON_OVERRIDE_DIST_PATH } = process.env;

/** Electron's program, found without its index.js, which would try to download it. */
const runtime = (): string | null => {
  const note = join(electronFolder, "path.txt");
  if (!existsSync(note)) {
    return null;
  }
  const dist = ELECTRON_OVERRIDE_DIST_PATH ?? join(electronFolder, "dist");
  const program = join(dist, readFileSync(note, "utf8"));
  return existsSync(program) ? program : null;
};

const hasDisplay = process.platform !== "linux" || Boolean(DISPLAY || WAYLAND_DISPLAY);

test.describe("the desktop window", () => {
  const executablePath = runtime();
  test.skip(executablePath === null, "Electron's runtime is not installed here");
  test.skip(!hasDisplay, "there is no display here");

  let home: string;
  let app: ElectronApplication;
  let page: Page;

  test.beforeEach(async () => {
    home = await mkdtemp(join(tmpdir(), "shortslide-desktop-"));
    app = await _electron.launch({
      ...(executablePath === null ? {} : { executablePath }),
      args: [root, ...(process.getuid?.() === 0 ? ["--no-sandbox"] : [])],
      env: { ...process.env, SHORTSLIDE_HOME: home },
    });
    page = await app.firstWindow();
  });

  test.afterEach(async () => {
    await app.close();
    await rm(home, { recursive: true, force: true });
  });

  test("opens our own screen under our own scheme", async () => {
    await expect(page).toHaveTitle(/Shortslide/);
    expect(page.url()).toBe("shortslide://app/");
  });

  test("gives the page the verbs of the table and nothing else of the machine", async () => {
    const seen = await page.evaluate(
      (bridge) => ({
        verbs: Object.keys(Reflect.get(window, bridge)),
        machine: ["require", "process", "module", "Buffer"].filter((name) => name in window),
      }),
      BRIDGE_NAME,
    );
    expect(seen).toEqual({ verbs: [...verbNames], machine: [] });
  });

  test("answers a verb from the songbook's folder", async () => {
    const answer: unknown = await page.evaluate(
      (bridge) => Reflect.get(window, bridge).listSongs(null),
      BRIDGE_NAME,
    );
    expect(answer).toMatchObject({ ok: true });
  });

  test("opens no other window and leaves its screen for no other page", async () => {
    const opened = await page.evaluate(() => window.open("https://example.org/") !== null);
    expect(opened).toBe(false);
    await page.evaluate(() => {
      window.location.href = "https://example.org/";
    });
    await expect(page).toHaveTitle(/Shortslide/);
    expect(page.url()).toBe("shortslide://app/");
    expect(app.windows()).toHaveLength(1);
  });
});
