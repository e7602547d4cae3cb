import * as v from "valibot";
import { describe, expect, test } from "vitest";
import {
  fromOtherSide,
  neckLookSchema,
  playerOf,
  usualNeckLook,
} from "../../../src-shared/neck/neckLook.ts";
import { firstPreferences, preferencesSchema } from "../../../src-shared/settings.ts";

const nuts = ["left", "right"] as const;
const seens = ["player", "listener"] as const;

describe("how the neck is seen", () => {
  test("tells the player's hand: who sits opposite sees the nut on the other side", () => {
    // Common practice, no published source: looking down, a right-handed player has the nut at the left.
    expect(playerOf({ nut: "left", seen: "player" })).toBe("right-handed");
    expect(playerOf({ nut: "right", seen: "listener" })).toBe("right-handed");
    expect(playerOf({ nut: "right", seen: "player" })).toBe("left-handed");
    expect(playerOf({ nut: "left", seen: "listener" })).toBe("left-handed");
  });

  test("from the other side is still the same player, and twice it is the same picture", () => {
    for (const nut of nuts) {
      for (const seen of seens) {
        const other = fromOtherSide({ nut, seen });
        expect(playerOf(other)).toBe(playerOf({ nut, seen }));
        expect(fromOtherSide(other)).toEqual({ nut, seen });
      }
    }
  });

  test("is refused where it names no side", () => {
    expect(v.safeParse(neckLookSchema, { ...usualNeckLook, nut: "top" }).success).toBe(false);
  });
});

test("preferences kept before there were sides of the neck read as a first player's", () => {
  const { neckLook: _look, laneZoom: _zoom, ...older } = firstPreferences;
  expect(v.parse(preferencesSchema, older)).toEqual(firstPreferences);
});
