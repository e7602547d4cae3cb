import type { Session, WebContents } from "electron";
import { expect, test } from "vitest";
import { refusePermissions } from "../../../src-main/desktop/permissions.ts";

type Handlers = {
  request?: Parameters<Session["setPermissionRequestHandler"]>[0];
  check?: Parameters<Session["setPermissionCheckHandler"]>[0];
  device?: Parameters<Session["setDevicePermissionHandler"]>[0];
};

test.each(["media", "notifications", "fullscreen", "clipboard-read", "openExternal"] as const)(
  "a page that asks for %s is refused, asked or checked",
  (permission) => {
    const handlers: Handlers = {};
    refusePermissions({
      setPermissionRequestHandler: (handler) => {
        handlers.request = handler;
      },
      setPermissionCheckHandler: (handler) => {
        handlers.check = handler;
      },
      setDevicePermissionHandler: (handler) => {
        handlers.device = handler;
      },
    });
    const contents = {} as WebContents;
    const ours = { isMainFrame: true, requestingUrl: "shortslide://app/" };
    const granted: boolean[] = [];
    handlers.request?.(contents, permission, (answer) => granted.push(answer), ours);
    expect(granted).toEqual([false]);
    expect(handlers.check?.(contents, permission, "shortslide://app", ours)).toBe(false);
    const details = { deviceType: "hid", origin: "shortslide://app", device: {} };
    expect(handlers.device?.(details as Parameters<NonNullable<Handlers["device"]>>[0])).toBe(
      false,
    );
  },
);
