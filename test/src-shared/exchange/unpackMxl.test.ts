import fc from "fast-check";
import { strFromU8, strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { unpackMxl } from "../../../src-shared/exchange/unpackMxl.ts";
import { zipDirectory } from "../../../src-shared/exchange/zipDirectory.ts";
import { scoreText } from "./scoreOf.ts";

const score = scoreText([{}, {}]);
const container =
  '<container><rootfiles><rootfile full-path="songs/Öl.xml"/></rootfiles></container>';
const files = {
  "META-INF/container.xml": strToU8(container),
  "other.xml": strToU8("<other/>"),
  "songs/Öl.xml": strToU8(score),
};
// Stored, not deflated, so that a changed byte of the score stays a byte of it.
const stored = zipSync(files, { level: 0, comment: "hand-made" });

describe("a packed score", () => {
  test("is the one that the container names, deflated or stored", () => {
    for (const bytes of [stored, zipSync(files, { level: 9 })]) {
      const found = unpackMxl(bytes);
      expect(found.ok && strFromU8(found.bytes)).toBe(score);
    }
  });

  test("has a list of files that names each", () => {
    expect(zipDirectory(stored, 64)?.map(({ name }) => name)).toEqual(Object.keys(files));
    expect(zipDirectory(new Uint8Array(100), 64)).toBeNull();
    expect(zipDirectory(new Uint8Array(3), 64)).toBeNull();
  });

  test("with a byte of the score changed is refused, as its checksum does not agree", () => {
    const from = strFromU8(stored, true).indexOf("<score-partwise");
    fc.assert(
      fc.property(
        fc.integer({ min: from, max: from + 200 }),
        fc.integer({ min: 1, max: 255 }),
        (at, change) => {
          const broken = stored.slice();
          broken[at] = (stored[at] ?? 0) ^ change;
          const found = unpackMxl(broken);
          expect(found.ok ? "" : found.says).toContain("checksum does not agree");
        },
      ),
    );
  });

  test("cut off before its list of files is refused, and so is one cut off anywhere", () => {
    for (let length = 4; length < stored.length - 9; length += 7) {
      const found = unpackMxl(stored.subarray(0, length));
      expect(found.ok ? "whole" : found.says, `${length}`).toMatch(
        /is cut off|no whole score|cannot be opened/,
      );
    }
  });
});
