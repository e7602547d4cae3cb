import type { MenuItemConstructorOptions } from "electron";
import { words } from "../../src-shared/wordTable.ts";

/**
 * A small menu by the system's own roles. Undo and redo are not in it: the chart has its own, over
 * more than one text field.
 */
export const menuTemplate = (platform: NodeJS.Platform): MenuItemConstructorOptions[] => [
  ...(platform === "darwin" ? [{ role: "appMenu" } as const] : []),
  { role: "fileMenu" },
  {
    label: words.app.menu.edit,
    submenu: [{ role: "cut" }, { role: "copy" }, { role: "paste" }, { role: "selectAll" }],
  },
  {
    label: words.app.menu.view,
    submenu: [
      { role: "zoomIn" },
      { role: "zoomOut" },
      { role: "resetZoom" },
      { type: "separator" },
      { role: "togglefullscreen" },
      { role: "toggleDevTools" },
    ],
  },
  { role: "windowMenu" },
];
