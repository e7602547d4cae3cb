import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const builder = JSON.parse(readFileSync("packaging/builder.json", "utf8"));

describe("the packaged program", () => {
  // Names and meanings: Electron's own page on fuses; the wire is read back by the dry run.
  test("cannot be run as Node, told Node's options or inspected, and loads nothing but its archive", () => {
    expect(builder.electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
    expect(builder.asar).toBe(true);
  });

  test("holds what the build makes and the licences, and no sources", () => {
    expect(builder.files).toEqual(
      expect.arrayContaining(["out/main/desktop.cjs", "out/renderer/**", "THIRD_PARTY.txt"]),
    );
    expect(builder.files.join(" ")).not.toMatch(/src-|test|e2e|\*\*\/\*/);
  });

  test("is made for Linux, macOS and Windows, from an icon of our own", () => {
    for (const system of ["linux", "mac", "win"]) {
      expect(builder[system].target.length).toBeGreaterThan(0);
    }
    const png = readFileSync("packaging/icons/icon.png");
    // The width and height of a PNG: bytes 16 to 23 (PNG specification, 11.2.2).
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([1024, 1024]);
    expect(existsSync("packaging/icons/icon.svg")).toBe(true);
  });

  test("is asked for songs in files of their own kind", () => {
    expect(builder.fileAssociations).toMatchObject([
      { ext: "shortslide", mimeType: "application/vnd.shortslide+json" },
    ]);
  });

  test("is sent nowhere by the packager", () => {
    expect(builder.publish).toBe(null);
  });
});
