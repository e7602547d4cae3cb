import { expect, test } from "vitest";
import { bearsToken, makeToken } from "../../../src-main/local/token.ts";

test("a token has 256 bits, in letters an address may hold, and is never the same", () => {
  const tokens = Array.from({ length: 50 }, makeToken);
  for (const token of tokens) {
    expect(token).toMatch(/^[A-Za-z0-9_-]{43}$/);
    expect(Buffer.from(token, "base64url")).toHaveLength(32);
  }
  expect(new Set(tokens).size).toBe(50);
});

test("only the whole token, borne as RFC 6750 says, is the token", () => {
  const token = makeToken();
  expect(bearsToken(`Bearer ${token}`, token)).toBe(true);
  for (const wrong of [
    undefined,
    "",
    token,
    "Bearer ",
    `Bearer ${token.slice(0, -1)}`,
    `Bearer ${token}x`,
    `Basic ${token}`,
    `Bearer ${makeToken()}`,
  ]) {
    expect(bearsToken(wrong, token)).toBe(false);
  }
});
