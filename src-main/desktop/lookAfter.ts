import type { BrowserWindow, Dialog } from "electron";
import { words } from "../../src-shared/wordTable.ts";

/** A screen that stops working twice within this time is not opened again unasked. */
export const CRASH_AGAIN_MS = 60_000;

/** What looking after a window needs from outside. */
export type Surroundings = {
  readonly dialog: Pick<Dialog, "showMessageBox" | "showMessageBoxSync">;
  readonly quit: () => void;
  readonly log: (line: string) => void;
  readonly nowMs: () => number;
  /** Resolves when what the page sent to be saved has been. */
  readonly saved: () => Promise<void>;
};

const says = words.window;

/**
 * Opens the screen again when it has crashed: its address and its tab store bring it back to where it
 * was. Where it crashes again at once, the player is asked.
 */
const openAgain = (window: BrowserWindow, { dialog, quit, log, nowMs }: Surroundings): void => {
  let crashedMs = Number.NEGATIVE_INFINITY;
  window.webContents.on("render-process-gone", (_event, { reason, exitCode }) => {
    log(`the screen stopped working (${reason}, ${exitCode})`);
    const again = nowMs() - crashedMs < CRASH_AGAIN_MS;
    crashedMs = nowMs();
    if (!again) {
      window.reload();
      return;
    }
    void dialog
      .showMessageBox(window, {
        type: "error",
        message: says.crashed,
        detail: says.crashedDetail(reason),
        buttons: [says.openAgain, says.quit],
      })
      .then(({ response }) => (response === 0 ? window.reload() : quit()));
  });
};

/**
 * A page that has not saved everything asks to stay. What it has just sent is let through and the
 * window closed again; where it still asks to stay, the player decides.
 */
const askBeforeLoss = (window: BrowserWindow, { dialog, saved }: Surroundings): void => {
  let closing = false;
  let triedAgain = false;
  window.on("close", () => {
    closing = true;
  });
  window.webContents.on("will-prevent-unload", (event) => {
    if (closing && !triedAgain) {
      triedAgain = true;
      void saved().then(() => window.close());
      return;
    }
    closing = false;
    triedAgain = false;
    const choice = dialog.showMessageBoxSync(window, {
      type: "warning",
      message: says.notSaved,
      detail: says.notSavedDetail,
      buttons: [says.stay, says.leave],
      defaultId: 0,
      cancelId: 0,
    });
    // For Electron, to prevent this event is to let the page go all the same.
    if (choice === 1) {
      event.preventDefault();
    }
  });
};

/** Sees that a window comes back after a crash and does not go with unsaved work. */
export const lookAfter = (window: BrowserWindow, surroundings: Surroundings): void => {
  openAgain(window, surroundings);
  askBeforeLoss(window, surroundings);
};
