import { posix, win32 } from "node:path";

/** What decides where the songbook is kept. */
export type Surroundings = {
  readonly platform: NodeJS.Platform;
  readonly env: {
    readonly SHORTSLIDE_HOME?: string | undefined;
    readonly APPDATA?: string | undefined;
    readonly XDG_DATA_HOME?: string | undefined;
  };
  /** The user's own folder. */
  readonly userFolder: string;
};

/**
 * The folder everything is kept in: SHORTSLIDE_HOME where it is set, else where the system's
 * programs keep their data (on Linux the XDG Base Directory Specification, which ignores
 * a relative XDG_DATA_HOME). The window and the browser use the same one.
 */
export const homeFolder = ({ platform, env, userFolder }: Surroundings): string => {
  const path = platform === "win32" ? win32 : posix;
  const own = env.SHORTSLIDE_HOME;
  if (own !== undefined && own !== "") {
    return path.resolve(own);
  }
  if (platform === "win32") {
    return path.join(env.APPDATA ?? path.join(userFolder, "AppData", "Roaming"), "Shortslide");
  }
  if (platform === "darwin") {
    return path.join(userFolder, "Library", "Application Support", "Shortslide");
  }
  const data = env.XDG_DATA_HOME;
  return data !== undefined && path.isAbsolute(data)
    ? path.join(data, "shortslide")
    : path.join(userFolder, ".local", "share", "shortslide");
};
