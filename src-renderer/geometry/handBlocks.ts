import type { Leg, Placement } from "../../src-shared/route/route.ts";
import { type HandScale, handY, laneX, leaveTick, type Timing } from "./laneGeometry.ts";
import { type Box, shapeForm } from "./shapeForm.ts";
import { type BarWindow, stretchesWithin } from "./visible.ts";

/** A slope from one level to the next. Pixels. */
export type Slope = {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** The hand cannot be there in time. */
  readonly tooFast: boolean;
};

/** A placement as the hand path draws it. */
export type HandBlock = {
  readonly placement: Placement;
  readonly box: Box;
  /** Width to where the next one is due. */
  readonly room: number;
  /** Outline of its shape's form, filling the box. */
  readonly form: string;
  /** How the hand goes on to the next placement; null where it stays, or rests before it. */
  readonly slope: Slope | null;
};

/** Height of a block. */
export const BLOCK_HEIGHT = 34;
const SEAM = 1;

/** Where the music turns back to a loop's start, and how the hand gets to what is held there. */
export type Turn = {
  /** Tick at which the loop ends. */
  readonly at: number;
  readonly to: Placement;
  readonly leg: Leg;
};

type Change = { readonly to: Placement; readonly leg: Leg; readonly due: number };

const isDrawn = (leg: Leg): boolean => leg.frets !== 0 || leg.way === "too-fast";

/** The change at the end of a placement, where the next follows without a rest or the loop turns. */
const changeFrom = (
  placement: Placement,
  placements: readonly Placement[],
  legs: readonly Leg[],
  turn: Turn | null,
): Change | null => {
  const end = placement.start + placement.length;
  if (turn && placement.start < turn.at && turn.at <= end)
    return isDrawn(turn.leg) ? { to: turn.to, leg: turn.leg, due: turn.at } : null;
  const to = placements[placement.index + 1];
  const leg = legs[placement.index];
  const joined = to !== undefined && to.start === end;
  return joined && leg && isDrawn(leg) ? { to, leg, due: to.start } : null;
};

/**
 * The placements of which some part is shown, as level blocks; between neighbours at different
 * positions a slope, from where the hand leaves to where it must be. What lies outside is cut off;
 * where a loop turns, the slope leads to its first placement.
 */
export const handBlocks = (
  placements: readonly Placement[],
  legs: readonly Leg[],
  timing: Timing,
  shown: BarWindow,
  scale: HandScale,
  perQuarter: number,
  turn: Turn | null = null,
): readonly HandBlock[] =>
  stretchesWithin(placements, shown.from, shown.to).map((placement) => {
    const { voicing } = placement;
    const start = Math.max(placement.start, shown.from);
    const end = Math.min(placement.start + placement.length, shown.to);
    const found = changeFrom(placement, placements, legs, turn);
    const change = found && found.due <= shown.to ? found : null;
    const left = laneX(start, perQuarter);
    const leaves = change ? leaveTick(placement, change.due, change.leg, timing) : end;
    const right = laneX(Math.max(start, Math.min(leaves, end)), perQuarter);
    const y = handY(scale, voicing.positionMm);
    const box = {
      x: left,
      y: y - BLOCK_HEIGHT / 2,
      width: Math.max(SEAM, right - left - SEAM),
      height: BLOCK_HEIGHT,
    };
    const slope = change && {
      x1: right - SEAM,
      y1: y,
      x2: laneX(change.due, perQuarter),
      y2: handY(scale, change.to.voicing.positionMm),
      tooFast: change.leg.way === "too-fast",
    };
    const room = laneX(end - start, perQuarter);
    return { placement, box, room, slope, form: shapeForm(voicing.shape, box) };
  });

const BAR_HALF = 8;

/** The small bar across the middle of a slope, by which one that is too fast is known. */
export const barAcross = ({ x1, y1, x2, y2 }: Slope): Omit<Slope, "tooFast"> => {
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2];
  const [dx, dy] = [(BAR_HALF * (y2 - y1)) / length, (BAR_HALF * (x2 - x1)) / length];
  return { x1: x - dx, y1: y + dy, x2: x + dx, y2: y - dy };
};
