import { describe, expect, test } from "vitest";
import { homeFolder } from "../../../src-main/services/homeFolder.ts";

describe("the home folder", () => {
  // XDG Base Directory Specification: $XDG_DATA_HOME, by default $HOME/.local/share; relative paths are ignored.
  test("on Linux is in XDG_DATA_HOME", () => {
    const env = { XDG_DATA_HOME: "/data/mine" };
    expect(homeFolder({ platform: "linux", env, userFolder: "/home/ada" })).toBe(
      "/data/mine/shortslide",
    );
  });

  test.each([{}, { XDG_DATA_HOME: "" }, { XDG_DATA_HOME: "relative/data" }])(
    "on Linux is in .local/share where the environment is %j",
    (env) => {
      expect(homeFolder({ platform: "linux", env, userFolder: "/home/ada" })).toBe(
        "/home/ada/.local/share/shortslide",
      );
    },
  );

  test("on macOS is in Application Support", () => {
    expect(homeFolder({ platform: "darwin", env: {}, userFolder: "/Users/ada" })).toBe(
      "/Users/ada/Library/Application Support/Shortslide",
    );
  });

  test("on Windows is in APPDATA", () => {
    const env = { APPDATA: "D:\\Roaming" };
    expect(homeFolder({ platform: "win32", env, userFolder: "C:\\Users\\ada" })).toBe(
      "D:\\Roaming\\Shortslide",
    );
    expect(homeFolder({ platform: "win32", env: {}, userFolder: "C:\\Users\\ada" })).toBe(
      "C:\\Users\\ada\\AppData\\Roaming\\Shortslide",
    );
  });

  test.each(["linux", "darwin"] as const)(
    "on %s is SHORTSLIDE_HOME where that is set",
    (platform) => {
      const env = { SHORTSLIDE_HOME: "/elsewhere", XDG_DATA_HOME: "/data/mine" };
      expect(homeFolder({ platform, env, userFolder: "/home/ada" })).toBe("/elsewhere");
    },
  );
});
