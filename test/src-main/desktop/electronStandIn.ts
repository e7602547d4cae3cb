import { EventEmitter } from "node:events";
import { frameAt, IpcLine } from "./ipcLine.ts";

/**
 * Stands in for Electron's module, which does nothing without its runtime: it writes down what is
 * asked of it, in order, and lets a test raise Electron's events.
 */
export const makeElectron = () => {
  const asked: string[] = [];
  const windows: StandInWindow[] = [];
  let becomeReady = (): void => undefined;
  let isReady = false;
  const ready = new Promise<void>((resolve) => {
    becomeReady = resolve;
  });
  const line = new IpcLine();

  class StandInContents extends EventEmitter {
    readonly mainFrame = frameAt("shortslide://app/");
    readonly sent: string[] = [];
    send(channel: string): void {
      this.sent.push(channel);
    }
    openHandler: ((details: { url: string }) => unknown) | null = null;
    setWindowOpenHandler(handler: (details: { url: string }) => unknown): void {
      this.openHandler = handler;
    }
  }

  class StandInWindow extends EventEmitter {
    static getAllWindows(): readonly StandInWindow[] {
      return windows;
    }
    readonly options: Record<string, unknown>;
    readonly webContents = new StandInContents();
    shown = false;
    focused = 0;
    minimized = false;
    loaded: string[] = [];
    /** What a page that has something unsaved says to each wish to close. */
    readonly leaving = { preventDefault: () => void asked.push("let go") };
    constructor(options: Record<string, unknown>) {
      super();
      asked.push("window");
      this.options = options;
      windows.push(this);
    }
    async loadURL(url: string): Promise<void> {
      this.loaded.push(url);
    }
    show(): void {
      this.shown = true;
    }
    focus(): void {
      this.focused += 1;
    }
    reload(): void {
      asked.push("reload");
    }
    close(): void {
      asked.push("close");
      this.emit("close");
      this.webContents.emit("will-prevent-unload", this.leaving);
    }
    isMinimized(): boolean {
      return this.minimized;
    }
    restore(): void {
      this.minimized = false;
    }
  }

  const app = Object.assign(new EventEmitter(), {
    lock: true,
    enableSandbox: () => void asked.push("sandbox"),
    requestSingleInstanceLock: () => {
      asked.push("lock");
      return app.lock;
    },
    setPath: (name: string, path: string) => void asked.push(`path ${name} ${path}`),
    isReady: () => isReady,
    whenReady: () => {
      asked.push("when ready");
      return ready;
    },
    quit: () => void asked.push("quit"),
    exit: (code: number) => void asked.push(`exit ${code}`),
  });

  return {
    asked,
    windows,
    line,
    becomeReady: async () => {
      isReady = true;
      becomeReady();
      await ready;
    },
    app,
    BrowserWindow: StandInWindow,
    Menu: {
      buildFromTemplate: (template: unknown) => template,
      setApplicationMenu: () => void asked.push("menu"),
    },
    dialog: {
      showErrorBox: (title: string) => void asked.push(`error box ${title}`),
      showMessageBox: async () => {
        asked.push("asked what to do");
        return { response: 1 };
      },
      /** 0 stays, 1 closes. */
      stays: 0,
      showMessageBoxSync(): number {
        asked.push("asked whether to stay");
        return this.stays;
      },
    },
    ipcMain: line,
    protocol: {
      registerSchemesAsPrivileged: (schemes: readonly { scheme: string }[]) =>
        void asked.push(`privileged ${schemes.map(({ scheme }) => scheme).join()}`),
      handle: (scheme: string) => void asked.push(`handle ${scheme}`),
    },
    session: {
      defaultSession: {
        setPermissionRequestHandler: () => void asked.push("permission requests"),
        setPermissionCheckHandler: () => void asked.push("permission checks"),
        setDevicePermissionHandler: () => void asked.push("device permissions"),
      },
    },
  };
};
