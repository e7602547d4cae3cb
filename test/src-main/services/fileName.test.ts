import { sep } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bareNameFrom, isBareName, pathIn } from "../../../src-main/services/fileName.ts";

describe("a bare name", () => {
  test.each(["lantern-creek", "Lantern Creek", "Höhenweg 7", "橋", "v1.2", "a"])(
    "may be %j",
    (name) => {
      expect(isBareName(name)).toBe(true);
    },
  );

  test.each([
    "",
    ".",
    "..",
    ".removed",
    "../up",
    "..\\up",
    "a/b",
    "C:",
    "name:stream",
    "what?",
    "tab\there",
    "nul\0",
    "ends.",
    "ends ",
    " starts",
    "\ud800",
    "x".repeat(121),
    "橋".repeat(70),
  ])("is not %j", (name) => {
    expect(isBareName(name)).toBe(false);
  });

  // Microsoft Learn, "Naming Files, Paths, and Namespaces".
  test.each(["CON", "prn", "aux", "NUL", "com1", "COM9", "lpt3", "con.txt", "LPT¹"])(
    "is not %j, which Windows keeps for a device",
    (name) => {
      expect(isBareName(name)).toBe(false);
    },
  );

  test("has a path directly in its folder, whatever it is", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (name) => {
        const path = pathIn(`${sep}home`, name, ".txt");
        expect(path === null || path === `${sep}home${sep}${name}.txt`).toBe(true);
      }),
    );
  });
});

describe("a name made from a title", () => {
  test.each([
    ["Lantern Creek Waltz", "lantern-creek-waltz"],
    ["The Miller's Second Gate", "the-millers-second-gate"],
    ["Über den Höhenweg", "uber-den-hohenweg"],
    ["  --  ", "song"],
    ["橋の下", "song"],
    ["", "song"],
    ["../../etc/passwd", "etc-passwd"],
    ["CON", "song-con"],
    ["Lpt1", "song-lpt1"],
  ])("of %j is %j", (title, name) => {
    expect(bareNameFrom(title)).toBe(name);
  });

  test("is bare and short, whatever the title", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 200 }), (title) => {
        const name = bareNameFrom(title);
        expect(isBareName(name)).toBe(true);
        expect(name.length).toBeLessThanOrEqual(65);
      }),
    );
  });
});
