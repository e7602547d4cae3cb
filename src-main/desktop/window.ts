import { BrowserWindow, type BrowserWindowConstructorOptions } from "electron";
import { SCREEN_ADDRESS } from "./appScheme.ts";

/** How the window is made; everything about safety is said, even where it is Electron's default. */
const windowOptions = (preload: string): BrowserWindowConstructorOptions => ({
  title: "Shortslide",
  width: 1280,
  height: 800,
  minWidth: 720,
  minHeight: 680,
  show: false,
  webPreferences: {
    preload,
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    webviewTag: false,
    experimentalFeatures: false,
    navigateOnDragDrop: false,
    spellcheck: false,
  },
});

/** Opens the one window, on our own screen and unable to leave it. */
export const openWindow = (preload: string, onShown: () => void): BrowserWindow => {
  const window = new BrowserWindow(windowOptions(preload));
  const { webContents } = window;
  webContents.on("will-navigate", (event) => event.preventDefault());
  webContents.on("will-frame-navigate", (event) => event.preventDefault());
  webContents.on("will-redirect", (event) => event.preventDefault());
  webContents.on("will-attach-webview", (event) => event.preventDefault());
  webContents.setWindowOpenHandler(() => ({ action: "deny" }));
  window.once("ready-to-show", () => {
    window.show();
    onShown();
  });
  return window;
};

/** Loads our screen into a window; rejects where it cannot be loaded. */
export const loadScreen = (window: BrowserWindow): Promise<void> => window.loadURL(SCREEN_ADDRESS);
