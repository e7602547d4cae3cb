import type { Session, WebContents } from "electron";
import { expect, test } from "vitest";
import { refusePermissions } from "../../../src-main/desktop/permissions.ts";

type Handlers = {
  request?: Parameters<Session["setPermissionRequestHandler"]>[0];
  check?: Parameters<Session["setPermissionCheckHandler"]>[0];
  device?: Parameters<Session["setDevicePermissionHandler"]>[0];
};

const refused = ["media", "notifications", "fullscreen", "midiSysex", "openExternal"] as const;
const granted = ["midi", "screen-wake-lock"] as const;

test.each([
  ...refused.map((permission) => ({ permission, verdict: "refused", given: false })),
  ...granted.map((permission) => ({ permission, verdict: "granted", given: true })),
])("a page that asks for $permission is $verdict it, asked or checked", ({ permission, given }) => {
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
  const answers: boolean[] = [];
  handlers.request?.(contents, permission, (answer) => answers.push(answer), ours);
  expect(answers).toEqual([given]);
  expect(handlers.check?.(contents, permission, "shortslide://app", ours)).toBe(given);
  const details = { deviceType: "hid", origin: "shortslide://app", device: {} };
  expect(handlers.device?.(details as Parameters<NonNullable<Handlers["device"]>>[0])).toBe(false);
});
