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

/** The change from a placement to the one that follows it without a rest; null where none does. */
const changeFrom = (
  placement: Placement,
  placements: readonly Placement[],
  legs: readonly Leg[],
): { readonly to: Placement; readonly leg: Leg } | null => {
  const to = placements[placement.index + 1];
  const leg = legs[placement.index];
  const joined = to !== undefined && to.start === placement.start + placement.length;
  const drawn = leg && (leg.frets !== 0 || leg.way === "too-fast");
  return joined && drawn ? { to, leg } : null;
};

/**
 * The placements of which some part is shown, as level blocks; between neighbours at different
 * positions a slope, from where the hand leaves to where it must be.
 */
export const handBlocks = (
  placements: readonly Placement[],
  legs: readonly Leg[],
  timing: Timing,
  shown: BarWindow,
  scale: HandScale,
  perQuarter: number,
): readonly HandBlock[] =>
  stretchesWithin(placements, shown.from, shown.to).map((placement) => {
    const { start, length, voicing } = placement;
    const change = changeFrom(placement, placements, legs);
    const left = laneX(start, perQuarter);
    const leaves = change ? leaveTick(placement, change.to, change.leg, timing) : start + length;
    const right = laneX(leaves, perQuarter);
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
      x2: laneX(change.to.start, perQuarter),
      y2: handY(scale, change.to.voicing.positionMm),
      tooFast: change.leg.way === "too-fast",
    };
    const room = laneX(length, perQuarter);
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
