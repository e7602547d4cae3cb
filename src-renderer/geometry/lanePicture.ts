import type { Timeline } from "../../src-shared/chart/song.ts";
import type { Neck } from "../../src-shared/neck/neck.ts";
import type { Leg, Placement } from "../../src-shared/route/route.ts";
import type { Span } from "../../src-shared/score/score.ts";
import { TICKS_PER_QUARTER } from "../../src-shared/units.ts";
import { type FretLine, fretLines, type HandScale, handScale, laneX } from "./laneGeometry.ts";
import type { LaneLayout } from "./laneLayout.ts";
import { type LaneSegment, laneSegments } from "./laneSegments.ts";
import { markerFrets } from "./neckGeometry.ts";
import { chunkStart } from "./visible.ts";

/** What of the lanes is drawn while now is anywhere within a chunk of time. Pixels. */
export type LanePicture = {
  readonly segments: readonly LaneSegment[];
  readonly left: number;
  readonly width: number;
};

/** Beyond the screen's edges so much is drawn too, as shares of its width. */
const BEHIND = 0.4;
const AHEAD = 0.8;

/** Draws chunk number `chunk` of `chunkTicks` with what can be seen around it. */
export const lanePicture = (
  timeline: Timeline,
  layout: LaneLayout,
  laneWidth: number,
  loop: Span | null,
  chunk: number,
  chunkTicks: number,
): LanePicture => {
  const { perQuarter, inset } = layout;
  const ticks = (laneWidth / perQuarter) * TICKS_PER_QUARTER;
  const from = chunkStart(chunk, chunkTicks) - ticks * BEHIND;
  const to = chunkStart(chunk + 1, chunkTicks) + ticks * AHEAD;
  return {
    segments: laneSegments(timeline.bars, from, to, loop),
    left: laneX(from, perQuarter) - inset,
    width: laneX(to - from, perQuarter) + inset + 2,
  };
};

/** What the whole route has in common, wherever now is. */
export type HandLane = {
  readonly scale: HandScale;
  readonly fretLines: readonly FretLine[];
  /** Frets up (positive) or down on the way into each placement, by its index. */
  readonly fretsInto: ReadonlyMap<number, number>;
};

/** Lays a route's positions out between the top and the bottom of the hand's lane. */
export const handLane = (
  neck: Neck,
  placements: readonly Placement[],
  legs: readonly Leg[],
  layout: LaneLayout,
): HandLane => {
  const scale = handScale(placements, layout.handTop, layout.handBottom);
  return {
    scale,
    fretLines: fretLines(scale, markerFrets, neck.scaleLength),
    fretsInto: new Map(legs.map((leg) => [leg.to, leg.frets])),
  };
};
