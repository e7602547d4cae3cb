import { expect, test } from "vitest";
import { steady } from "../../../src-renderer/state/steady.ts";

test("the value from before stays for as long as the content does", () => {
  const keep = steady<{ readonly at: number; readonly of: object }>();
  const part = {};
  const first = keep({ at: 3, of: part });
  expect(keep({ at: 3, of: part })).toBe(first);
});

test("a field that is another one, or another object alike, makes the new value count", () => {
  const keep = steady<{ readonly at: number; readonly of: object }>();
  const part = {};
  keep({ at: 3, of: part });
  const second = { at: 4, of: part };
  expect(keep(second)).toBe(second);
  const third = { at: 4, of: {} };
  expect(keep(third)).toBe(third);
});
