import { mkdirSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from "electron";
import { FILES_HANDED } from "../../src-shared/host.ts";
import { realDisk } from "../services/disk.ts";
import { makeHandedFiles, songFilesIn } from "../services/handedFiles.ts";
import { homeFolder } from "../services/homeFolder.ts";
import { makeHost } from "../services/makeHost.ts";
import { appScheme } from "./appScheme.ts";
import { answerScreen } from "./ipc.ts";
import { menuTemplate } from "./menu.ts";
import { refusePermissions } from "./permissions.ts";
import { serveScreen } from "./protocol.ts";
import { loadScreen, openWindow } from "./window.ts";

const home = homeFolder({ platform: process.platform, env: process.env, userFolder: homedir() });
const builtFolder = join(import.meta.dirname, "..");

/** What start.mjs waits for: from here on the player has a window. */
const WINDOW_LINE = "Shortslide's window is open.";

const say = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const showWindow = (): void => {
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
  window.webContents.on("render-process-gone", (_event, { reason }) => {
    void dialog
      .showMessageBox(window, {
        type: "error",
        message: "The screen stopped working.",
        detail: `Saved charts are safe. (${reason})`,
        buttons: ["Open it again", "Quit"],
      })
      .then(({ response }) => (response === 0 ? window.reload() : app.quit()));
  });
  loadScreen(window).catch((error: unknown) => {
    dialog.showErrorBox("Shortslide's screen cannot be shown", say(error));
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

const boot = (): void => {
  hand(songFilesIn(process.argv.slice(1), process.cwd()));
  // macOS hands files by this event, also before the app is ready.
  app.on("open-file", (event, path) => {
    event.preventDefault();
    hand([path]);
    if (app.isReady()) {
      showWindow();
    }
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
    showWindow();
    app.on("second-instance", (_event, args, folder) => {
      hand(songFilesIn(args.slice(1), folder));
      showWindow();
    });
    app.on("activate", showWindow);
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
