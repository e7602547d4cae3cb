import { mkdirSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from "electron";
import { FILES_HANDED } from "../../src-shared/host.ts";
import { words } from "../../src-shared/wordTable.ts";
import { realDisk } from "../services/disk.ts";
import { loggingTo, makeErrorLog } from "../services/errorLog.ts";
import { makeHandedFiles, songFilesIn } from "../services/handedFiles.ts";
import { homeFolder } from "../services/homeFolder.ts";
import { makeHost } from "../services/makeHost.ts";
import { appScheme } from "./appScheme.ts";
import { answerScreen, type Calls } from "./ipc.ts";
import { lookAfter } from "./lookAfter.ts";
import { menuTemplate } from "./menu.ts";
import { refusePermissions } from "./permissions.ts";
import { serveScreen } from "./protocol.ts";
import { loadScreen, openWindow } from "./window.ts";

const home = homeFolder({ platform: process.platform, env: process.env, userFolder: homedir() });
const log = loggingTo(makeErrorLog(home), realDisk.log);
const builtFolder = join(import.meta.dirname, "..");

/** What start.mjs waits for: from here on the player has a window. */
const WINDOW_LINE = "Shortslide's window is open.";

const say = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** More than a message from the page takes. */
const ARRIVING_MS = 200;

const showWindow = (calls: Calls): void => {
  const [open] = BrowserWindow.getAllWindows();
  if (open !== undefined) {
    if (open.isMinimized()) {
      open.restore();
    }
    open.focus();
    return;
  }
  const window = openWindow(join(builtFolder, "preload", "preload.cjs"), () => {
    process.stdout.write(`${WINDOW_LINE}\n`);
  });
  lookAfter(window, {
    dialog,
    quit: () => app.quit(),
    log,
    nowMs: () => Date.now(),
    saved: async () => {
      // What the page sends on its way out may arrive after its wish to stay.
      await pause(ARRIVING_MS);
      await calls.settled();
    },
  });
  loadScreen(window).catch((error: unknown) => {
    dialog.showErrorBox(words.host.notShown, say(error));
    app.exit(1);
  });
};

/** Files to bring in, by double click, from a terminal, or let fall on the program's picture. */
const handed = makeHandedFiles();
const hand = (paths: readonly string[]): void => {
  if (paths.length === 0) {
    return;
  }
  handed.offer(paths);
  // A screen that is not there yet asks by itself when it is.
  for (const window of BrowserWindow.getAllWindows()) {
    window.webContents.send(FILES_HANDED);
  }
};

/** What reaches the top is written down and said; the program goes on, so that nothing is lost. */
const tellTop = (thrown: unknown): void => {
  log(thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown));
  dialog.showErrorBox(words.window.broken, words.window.brokenDetail(say(thrown)));
};

const boot = (): void => {
  process.on("uncaughtException", tellTop);
  process.on("unhandledRejection", tellTop);

  hand(songFilesIn(process.argv.slice(1), process.cwd()));
  let show: (() => void) | null = null;
  // macOS hands files by this event, also before the app is ready.
  app.on("open-file", (event, path) => {
    event.preventDefault();
    hand([path]);
    show?.();
  });

  // Every page of this program runs in Chromium's sandbox.
  app.enableSandbox();

  // The screen has an origin of its own; this must be said before the app is ready.
  protocol.registerSchemesAsPrivileged([appScheme]);

  // The songbook and preferences, with every failure as an answer.
  const host = makeHost(home, realDisk, handed);

  void app.whenReady().then(() => {
    // The screen's files, under the content policy.
    serveScreen(protocol, join(builtFolder, "renderer"));

    // No permission is granted to any page.
    refusePermissions(session.defaultSession);

    // The table of verbs, for the main frame of our window only.
    const calls = answerScreen(ipcMain, host, () => {
      const [window] = BrowserWindow.getAllWindows();
      return window === undefined ? null : window.webContents.mainFrame;
    });

    // What is being saved when the window closes is saved to its end.
    app.on("will-quit", (event) => {
      if (calls.underWay() > 0) {
        event.preventDefault();
        void calls.settled().then(() => app.quit());
      }
    });

    Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(process.platform)));
    show = () => showWindow(calls);
    show();
    app.on("second-instance", (_event, args, folder) => {
      hand(songFilesIn(args.slice(1), folder));
      showWindow(calls);
    });
    app.on("activate", show);
  });

  app.on("window-all-closed", () => {
    if (process.platform !== "darwin") {
      app.quit();
    }
  });
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.on(signal, () => app.quit());
  }
};

// Chromium's own files stay with ours, so that two homes are two programs.
const chromiumFolder = join(home, "desktop");
try {
  mkdirSync(chromiumFolder, { recursive: true });
  app.setPath("userData", chromiumFolder);
} catch (error) {
  // The songbook will say the same on the screen; the window can open without it.
  process.stderr.write(`shortslide: ${chromiumFolder} cannot be used: ${say(error)}\n`);
}

// One Shortslide for one songbook: a second start shows the first one's window.
if (app.requestSingleInstanceLock()) {
  boot();
} else {
  app.quit();
}
