import type { Session } from "electron";

type Gates = Pick<
  Session,
  "setPermissionRequestHandler" | "setPermissionCheckHandler" | "setDevicePermissionHandler"
>;

/** Refuses every permission: the screen needs none to show and to sound. */
export const refusePermissions = (session: Gates): void => {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
};
