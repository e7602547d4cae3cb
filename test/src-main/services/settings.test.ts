import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makeRemarks } from "../../../src-main/services/remarks.ts";
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

      const remarks = makeRemarks();
      expect(await makeSettings(home, disk, remarks.add).read()).toEqual(firstPreferences);

      const [aside, ...more] = await readdir(home);
      expect(more).toEqual([]);
      expect(aside).toMatch(/^preferences\.json\.damaged-/);
      expect(await readFile(join(home, aside ?? ""), "utf8")).toBe(damaged);
      expect(disk.lines).toEqual([expect.stringContaining("preferences.json was damaged")]);
      expect(remarks.take()).toEqual([
        {
          code: "damaged",
          says: "Your preferences were damaged. They start anew.",
          try: expect.stringContaining(aside ?? ""),
        },
      ]);
    },
  );

  test.each(['{"version":1,"theme":"da', "\0\0\0"])(
    "that were written here and are damaged later (%j) are the last good ones again, for good",
    async (damaged) => {
      const home = await tempFolder();
      await makeSettings(home, quietDisk()).write(dark);
      await writeFile(join(home, "preferences.json"), damaged);
      const remarks = makeRemarks();
      expect(await makeSettings(home, quietDisk(), remarks.add).read()).toEqual(dark);
      expect(remarks.take()[0]?.says).toContain("The last good ones are back.");
      expect(await makeSettings(home, quietDisk(), remarks.add).read()).toEqual(dark);
      expect(remarks.take()).toEqual([]);
      const names = await readdir(home);
      const aside = names.find((name) => name.includes(".damaged-")) ?? "";
      expect(await readFile(join(home, aside), "utf8")).toBe(damaged);
    },
  );

  test("that cannot be read are not taken for missing ones", async () => {
    const home = await tempFolder();
    await mkdir(join(home, "preferences.json"));
    await expect(makeSettings(home, quietDisk()).read()).rejects.toThrow("EISDIR");
  });
});
