import { describe, expect, test } from "vitest";
import { handBlocks } from "../../../src-renderer/geometry/handBlocks.ts";
import { handScale, laneX } from "../../../src-renderer/geometry/laneGeometry.ts";
import { windowOf } from "../../../src-renderer/geometry/visible.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";

const blocksOf = (bars: string, shapes: readonly ("F" | "D" | "barre")[] = ["D"]) => {
  const { route, timeline } = chartToScore(
    `Title: Weir\nKey: G\n${bars}\n`,
    {
      ...wholeNeckPlan,
      fretHigh: 15,
      shapes,
    },
    null,
  );
  const placements = route?.placements ?? [];
  const shown = windowOf(timeline.bars, 0, 0, 100_000);
  return handBlocks(placements, shown, handScale(placements, 40, 140), 48);
};

describe("the hand path", () => {
  test("slides in the last eighth before a change", () => {
    const [g, c] = blocksOf("| G | C |");
    expect(g?.slope?.x1).toBeCloseTo(laneX(1920 - 240, 48) - 1, 9);
    expect(g?.slope?.x2).toBe(laneX(1920, 48));
    expect(g?.slope?.y2).toBe((c?.box.y ?? 0) + (c?.box.height ?? 0) / 2);
  });

  test("goes up where the chord lies higher up the neck", () => {
    const [g] = blocksOf("| G | C |");
    // D shape: G root at fret 8, C at 13 (common practice, no published source).
    expect(g?.slope?.y2).toBeLessThan(g?.slope?.y1 ?? 0);
  });

  test("draws no slope into a silence, nor at the end", () => {
    expect(blocksOf("| G | N.C. | C |").map((block) => block.slope)).toEqual([null, null]);
  });

  test("has a level block for a stay of a single eighth", () => {
    for (const block of blocksOf("| G C D G |")) {
      expect(block.box.width).toBeGreaterThan(0);
    }
  });
});
