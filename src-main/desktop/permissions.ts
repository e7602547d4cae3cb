import type { Session } from "electron";

type Gates = Pick<
  Session,
  "setPermissionRequestHandler" | "setPermissionCheckHandler" | "setDevicePermissionHandler"
>;

/**
 * What the screen needs: to hear the switches of MIDI controllers, without system exclusive messages
 * (those could change a device), and to keep itself awake while it plays.
 */
const needed: ReadonlySet<string> = new Set(["midi", "screen-wake-lock"]);

/** Refuses every permission but the two that the screen needs to be played without hands. */
export const refusePermissions = (session: Gates): void => {
  session.setPermissionRequestHandler((_contents, permission, decide) =>
    decide(needed.has(permission)),
  );
  session.setPermissionCheckHandler((_contents, permission) => needed.has(permission));
  session.setDevicePermissionHandler(() => false);
};
