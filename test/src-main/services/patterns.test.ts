import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { makePatterns } from "../../../src-main/services/patterns.ts";
import { makeRemarks } from "../../../src-main/services/remarks.ts";
import type { Pattern } from "../../../src-shared/roll/pattern.ts";
import { tempFolder } from "../tempFolder.ts";
import { quietDisk } from "../testDisk.ts";

const stroke = { picks: [{ finger: "T", on: "fifth" }], accent: true, damped: false } as const;
const own: readonly Pattern[] = [
  { name: "Tin gate", meter: "6/8", strokes: [stroke, { ...stroke, picks: [], damped: true }] },
  { name: "Slow barge", meter: "4/4", strokes: [stroke] },
];

describe("a player's patterns", () => {
  test("are none where none are kept yet", async () => {
    const patterns = makePatterns(join(await tempFolder(), "not-made-yet"), quietDisk());
    expect(await patterns.read()).toEqual({ ok: true, value: [] });
  });

  test("come back as they were written and in their order, by another start too", async () => {
    const home = join(await tempFolder(), "not-made-yet");
    await makePatterns(home, quietDisk()).write(own);
    expect(await makePatterns(home, quietDisk()).read()).toEqual({ ok: true, value: own });
  });

  test.each([
    '[{"name":"Tin ga',
    "",
    '{"patterns":[]}',
    '[{"name":"Tin gate","meter":"5/4","strokes":[]}]',
    "\0\0",
  ])("in a damaged file (%j) are set aside and said once, then there are none", async (damaged) => {
    const home = await tempFolder();
    await writeFile(join(home, "patterns.json"), damaged);
    const disk = quietDisk();

    const answer = await makePatterns(home, disk).read();

    const [aside = "", ...more] = await readdir(home);
    expect(more).toEqual([]);
    expect(aside).toMatch(/^patterns\.json\.damaged-/);
    expect(await readFile(join(home, aside), "utf8")).toBe(damaged);
    expect(disk.lines).toEqual([expect.stringContaining("patterns.json was damaged")]);
    expect(answer).toMatchObject({
      ok: false,
      problem: { code: "damaged", try: expect.stringContaining(aside) },
    });
    expect(await makePatterns(home, disk).read()).toEqual({ ok: true, value: [] });
  });

  test("that were written here come back whole where their file is damaged later", async () => {
    const home = await tempFolder();
    await makePatterns(home, quietDisk()).write(own);
    await writeFile(join(home, "patterns.json"), '[{"name":"Tin ga');
    const remarks = makeRemarks();
    const answer = await makePatterns(home, quietDisk(), remarks.add).read();
    expect(answer).toEqual({ ok: true, value: own });
    expect(remarks.take()[0]?.says).toContain("The last good ones are back.");
    expect(await makePatterns(home, quietDisk()).read()).toEqual({ ok: true, value: own });
  });

  test("that cannot be read are not taken for missing ones", async () => {
    const home = await tempFolder();
    await mkdir(join(home, "patterns.json"));
    await expect(makePatterns(home, quietDisk()).read()).rejects.toThrow("EISDIR");
  });
});
