import { contextBridge, ipcRenderer } from "electron";
import { BRIDGE_NAME, channelOf, verbNames } from "../../src-shared/host.ts";

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
