import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { diskProblem, isSystemError } from "../../../src-main/services/diskProblem.ts";
import { tempFolder } from "../tempFolder.ts";

const systemError = (code: string): Error & { code: string } =>
  Object.assign(new Error(code), { code, syscall: "open", path: "/songs/a.txt" });

describe("a failed system call", () => {
  test.each([
    ["ENOSPC", "The disk is full."],
    ["EACCES", "The system refuses access to /songs/a.txt."],
    ["EROFS", "/songs/a.txt can only be read."],
    ["ENOENT", "/songs/a.txt is gone."],
    ["EIO", "The disk failed on /songs/a.txt (EIO)."],
  ])("%s is said as %j, with something to try", (code, says) => {
    const problem = diskProblem(systemError(code));
    expect(problem).toMatchObject({ code: "disk", says });
    expect(problem.try).not.toBe("");
  });

  test("of the real disk is known as one, and says which path", async () => {
    const folder = await tempFolder();
    const file = join(folder, "file");
    await writeFile(file, "");
    const errors = await Promise.all(
      [readFile(join(folder, "none")), readFile(folder), mkdir(join(file, "below"))].map((call) =>
        call.then(
          () => null,
          (error: unknown) => error,
        ),
      ),
    );
    expect(errors.map(isSystemError)).toEqual([true, true, true]);
    const says = errors.filter(isSystemError).map((error) => diskProblem(error).says);
    expect(says[0]).toBe(`${join(folder, "none")} is gone.`);
    expect(says[2]).toBe(`${join(file, "below")} is not what it should be.`);
  });

  test("is told from a mistake in the program", () => {
    expect(isSystemError(new TypeError("x is not a function"))).toBe(false);
    expect(isSystemError("ENOSPC")).toBe(false);
  });
});
