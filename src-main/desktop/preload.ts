import { contextBridge, ipcRenderer } from "electron";
import { BRIDGE_NAME, channelOf, FILES_HANDED, verbNames } from "../../src-shared/host.ts";

/** The page's window, as far as it is needed here. */
declare const window: EventTarget;

// One function for each verb of the table, and nothing else: no channel names, no Electron.
contextBridge.exposeInMainWorld(
  BRIDGE_NAME,
  Object.fromEntries(
    verbNames.map((name) => [
      name,
      (argument: unknown): Promise<unknown> => ipcRenderer.invoke(channelOf(name), argument),
    ]),
  ),
);

// That files wait is said as an event without content; what they are the screen asks by a verb.
ipcRenderer.on(FILES_HANDED, () => {
  window.dispatchEvent(new Event(FILES_HANDED));
});
