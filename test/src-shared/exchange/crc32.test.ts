import { crc32 as zlibCrc32 } from "node:zlib";
import fc from "fast-check";
import { expect, test } from "vitest";
import { crc32 } from "../../../src-shared/exchange/crc32.ts";

test("the checksum of any bytes is the one that zlib tells", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 600 }), (bytes) => {
      expect(crc32(bytes)).toBe(zlibCrc32(bytes));
    }),
  );
});
