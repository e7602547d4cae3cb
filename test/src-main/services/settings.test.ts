import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeSettings } from "../../../src-main/services/settings.ts";
import { firstPreferences, type Preferences } from "../../../src-shared/settings.ts";
import { tempFolder } from "../tempFolder.ts";
import { quietDisk } from "../testDisk.ts";

const dark: Preferences = { ...firstPreferences, theme: "dark", cautionRead: true };

describe("preferences", () => {
  test("are the first ones where none are kept yet", async () => {
    const settings = makeSettings(join(await tempFolder(), "not-made-yet"), quietDisk());
    expect(await settings.read()).toEqual(firstPreferences);
  });

  test("come back as they were written, by another start too", async () => {
    const home = join(await tempFolder(), "not-made-yet");
    await makeSettings(home, quietDisk()).write(dark);
    expect(await makeSettings(home, quietDisk()).read()).toEqual(dark);
  });

  test.each(['{"version":1,"theme":"da', "", '{"version":7}', '"dark"', "\0\0"])(
    "that are damaged (%j) are set aside, said, and the first ones given",
    async (damaged) => {
      const home = await tempFolder();
      await writeFile(join(home, "preferences.json"), damaged);
      const disk = quietDisk();

      expect(await makeSettings(home, disk).read()).toEqual(firstPreferences);

      const [aside, ...more] = await readdir(home);
      expect(more).toEqual([]);
      expect(aside).toMatch(/^preferences\.json\.damaged-/);
      expect(await readFile(join(home, aside ?? ""), "utf8")).toBe(damaged);
      expect(disk.lines).toEqual([expect.stringContaining("preferences.json was damaged")]);
    },
  );

  test("that cannot be read are not taken for missing ones", async () => {
    const home = await tempFolder();
    await mkdir(join(home, "preferences.json"));
    await expect(makeSettings(home, quietDisk()).read()).rejects.toThrow("EISDIR");
  });
});
