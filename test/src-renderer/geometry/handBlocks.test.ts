import { describe, expect, test } from "vitest";
import { barAcross, handBlocks } from "../../../src-renderer/geometry/handBlocks.ts";
import { handScale, handY, laneX } from "../../../src-renderer/geometry/laneGeometry.ts";
import { barsWithin } from "../../../src-renderer/geometry/visible.ts";
import { loopTurn } from "../../../src-renderer/screens/play/loopTurn.ts";
import { chartToScore } from "../../../src-shared/chartToScore.ts";
import { wholeNeckPlan } from "../../../src-shared/settings.ts";
import { tick } from "../../../src-shared/units.ts";

const PER_QUARTER = 48;
const walkOf = (bars: string, tempo = 120) =>
  chartToScore(
    `Title: Weir\nKey: G\nTime: 4/4\n${bars}\n`,
    { ...wholeNeckPlan, fretHigh: 15, shapes: ["D"] },
    tempo,
  );
const blocksOf = (bars: string, at = 120) => {
  const { route, timeline, tempo } = walkOf(bars, at);
  const placements = route?.placements ?? [];
  const shown = barsWithin(timeline.bars, 0, 100_000);
  const timing = { meter: timeline.meter, tempo };
  const scale = handScale(placements, 40, 140);
  return handBlocks(placements, route?.legs ?? [], timing, shown, scale, PER_QUARTER);
};

describe("the hand path", () => {
  test("leaves for a change as long before it as the hand needs", () => {
    for (const tempo of [40, 90, 160]) {
      const leg = walkOf("| G | C |", tempo).route?.legs[0];
      const [g, c] = blocksOf("| G | C |", tempo);
      expect(leg?.way).not.toBe("too-fast");
      const quarters = ((leg?.need ?? 0) / 60_000) * tempo;
      expect(g?.slope?.x1).toBeCloseTo((4 - quarters) * PER_QUARTER - 1, 6);
      expect(g?.slope?.x2).toBe(laneX(1920, PER_QUARTER));
      expect(g?.slope?.y2).toBe((c?.box.y ?? 0) + (c?.box.height ?? 0) / 2);
      expect(g?.slope?.tooFast).toBe(false);
    }
  });

  test("leaves where the strings begin to glide", () => {
    const { score } = walkOf("| G | C |", 100);
    const glide = score.notes.find((note) => note.glide)?.glide;
    const [g] = blocksOf("| G | C |", 100);
    expect(Math.abs((g?.slope?.x1 ?? 0) + 1 - laneX(glide?.start ?? 0, PER_QUARTER))).toBeLessThan(
      laneX(1, PER_QUARTER),
    );
  });

  test("takes three eighths, and no more, for a change that is too fast", () => {
    const [g] = blocksOf("| G | C |", 300);
    expect(g?.slope?.tooFast).toBe(true);
    expect(g?.slope?.x1).toBeCloseTo(laneX(1920 - 3 * 240, PER_QUARTER) - 1, 6);
  });

  test("crosses a slope at its middle and squarely", () => {
    const slope = { x1: 10, y1: 90, x2: 70, y2: 50, tooFast: true };
    const bar = barAcross(slope);
    expect([(bar.x1 + bar.x2) / 2, (bar.y1 + bar.y2) / 2]).toEqual([40, 70]);
    expect((bar.x2 - bar.x1) * 60 + (bar.y2 - bar.y1) * -40).toBeCloseTo(0, 9);
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

describe("the hand path where a loop turns back", () => {
  const loopOf = (bars: string, firstBar: number, lastBar: number) => {
    const walk = walkOf(bars);
    const { timeline, route } = walk;
    const [first, last] = [timeline.bars[firstBar], timeline.bars[lastBar]];
    if (!first || !last || !route) throw new Error("no such bars");
    const loop = { start: first.start, end: tick(last.start + last.length) };
    const shown = barsWithin(timeline.bars, loop.start, loop.end);
    const turn = loopTurn(walk, loop);
    const timing = { meter: timeline.meter, tempo: walk.tempo };
    const scale = handScale(route.placements, 40, 140);
    const { placements, legs } = route;
    return {
      turn,
      loop,
      scale,
      blocks: handBlocks(placements, legs, timing, shown, scale, PER_QUARTER, turn),
    };
  };

  test("goes to what the loop begins with, not on into the song", () => {
    const { blocks, loop, turn, scale } = loopOf("| G | C | F | D |", 1, 2);
    const slope = blocks.at(-1)?.slope;
    expect(blocks.map((block) => block.placement.chord.name)).toEqual(["C", "F"]);
    expect(turn?.to.chord.name).toBe("C");
    expect(slope?.x2).toBe(laneX(loop.end, PER_QUARTER));
    expect(slope?.y2).toBe(handY(scale, turn?.to.voicing.positionMm ?? 0));
  });

  test("cuts a chord off that lasts longer than the loop", () => {
    const { blocks, loop } = loopOf("| G | C | C | C |", 0, 1);
    const last = blocks.at(-1);
    expect((last?.box.x ?? 0) + (last?.box.width ?? 0)).toBeLessThanOrEqual(
      laneX(loop.end, PER_QUARTER),
    );
  });

  test("stays level where the loop holds one chord", () => {
    const { turn, blocks } = loopOf("| G | C | C | D |", 1, 2);
    expect([turn?.leg.kind, blocks.map((block) => block.slope)]).toEqual(["hold", [null]]);
  });

  test("takes as long for the way back as the route's own seam, where the loop is the whole song", () => {
    const walk = chartToScore(
      "Title: Weir\nKey: G\nTime: 4/4\n| G | C | D |\n",
      { ...wholeNeckPlan, goesRound: true },
      120,
    );
    const turn = loopTurn(walk, { start: tick(0), end: walk.timeline.length });
    expect(turn?.leg).toEqual(walk.route?.legs.find(({ seam }) => seam));
  });
});
