import { describe, expect, test } from "vitest";
import type { FitManner } from "../../../src-shared/roll/fitRolls.ts";
import type { FifthUse } from "../../../src-shared/roll/picking.ts";
import { playedOn } from "../../../src-shared/roll/played.ts";
import { exitsOf, wayFor, windowsOf } from "../../../src-shared/route/change.ts";

const measure = { offset: 0, length: 8, meter: "4/4" } as const;
const exits = (manner: Partial<FitManner>, fifth: FifthUse) =>
  exitsOf(
    playedOn(measure, { style: "forward", density: "full", soft: false, ...manner }, [], fifth),
  ).map(({ way, eighths }) => `${way} ${eighths}`);

describe("the ways to leave a measure", () => {
  test("of a forward roll on the closed strings free one, two and three eighths", () => {
    expect(exits({}, "never")).toEqual(["keep 1", "let-one 2", "let-two 3"]);
  });

  test("let the drone cover: T I M T I M T M with the last thumb on the fifth string", () => {
    // With the last M let go, the hand is free from the M before the drone on: three eighths; with
    // that M let go as well, four.
    const covered = ["keep 1", "let-one 2", "open 3", "open 4"];
    expect(exits({}, "cover")).toEqual(covered);
    expect(exits({}, "always")).toEqual(covered);
  });

  test("have no use for a drone that lies far from the end", () => {
    expect(exits({ style: "forward-reverse" }, "cover")).toEqual(exits({}, "never"));
  });

  test("count rests as time for the hand", () => {
    // T . M . I . T . and thumb, rest, pinch, rest.
    expect(exits({ density: "beats" }, "never")).toEqual(["keep 2", "let-one 4", "let-two 6"]);
    expect(exits({ style: "vamp" }, "never")).toEqual(["keep 2", "let-one 4", "let-two 6"]);
    expect(exits({ density: "once" }, "never")).toEqual(["keep 8"]);
  });
});

describe("the way that is taken", () => {
  const windows = [
    { way: "keep", eighths: 1 },
    { way: "let-one", eighths: 2 },
    { way: "open", eighths: 3 },
    { way: "open", eighths: 4 },
  ] as const;

  test("is the first whose time holds the need, and too fast past the last", () => {
    expect([0, 100, 101, 250, 320, 401].map((need) => wayFor(need, 100, windows))).toEqual([
      { way: "hold", eighths: 1 },
      { way: "keep", eighths: 1 },
      { way: "let-one", eighths: 2 },
      { way: "open", eighths: 3 },
      { way: "open", eighths: 4 },
      { way: "too-fast", eighths: 4 },
    ]);
  });

  test("has a rest before the next chord besides, round the seam too", () => {
    const held = { start: 960, length: 960, exits: windows };
    expect(windowsOf(held, { start: 2400 }, null).map(({ eighths }) => eighths)).toEqual([
      3, 4, 5, 6,
    ]);
    expect(windowsOf(held, { start: 0 }, 1920)).toEqual(windows);
  });
});
