import { expect, test } from "vitest";
import { LAUNCH_MS, makeKeys } from "../../../src-main/local/keys.ts";

test("a launch code is too old after two minutes, and codes are all different", () => {
  let nowMs = 7_000;
  const keys = makeKeys(() => nowMs);
  const early = keys.makeCode();
  const late = keys.makeCode();
  expect(early).not.toBe(late);
  nowMs += LAUNCH_MS;
  expect(keys.redeem(early)).toMatchObject({ kind: "token" });
  nowMs += 1;
  expect(keys.redeem(late)).toEqual({ kind: "expired" });
  expect(keys.redeem("guessed")).toEqual({ kind: "unknown" });
});
