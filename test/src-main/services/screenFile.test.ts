import { mkdir, symlink } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { findScreenFile } from "../../../src-main/services/screenFile.ts";
import { page, screenFixture, script, waysOut } from "../screenFixture.ts";
import { tempFolder } from "../tempFolder.ts";

const text = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes);

describe("a file of the screen", () => {
  test("is the page itself at /, asked for anew each time", async () => {
    const file = await findScreenFile(await screenFixture(), "/");
    expect(text(file?.bytes)).toBe(page);
    expect(file).toMatchObject({ type: "text/html; charset=utf-8", cacheControl: "no-cache" });
  });

  test("under /assets/ is kept for good, because its name changes with its content", async () => {
    const file = await findScreenFile(await screenFixture(), "/assets/index-B4x_9-Qz.js");
    expect(text(file?.bytes)).toBe(script);
    expect(file).toMatchObject({
      type: "text/javascript; charset=utf-8",
      cacheControl: expect.stringContaining("immutable"),
    });
  });

  test.each(waysOut)("is not what %j asks for", async (path) => {
    const screen = await screenFixture();
    await symlink(join(screen, "..", "secret.json"), join(screen, "link.json"));
    expect(await findScreenFile(screen, path)).toBeNull();
  });

  test("is not a folder with a file's name", async () => {
    const screen = await screenFixture();
    await mkdir(join(screen, "folder.json"));
    expect(await findScreenFile(screen, "/folder.json")).toBeNull();
  });

  test("is not there where the screen is not built", async () => {
    expect(await findScreenFile(join(await tempFolder(), "renderer"), "/")).toBeNull();
  });
});
