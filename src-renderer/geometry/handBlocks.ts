import type { Placement } from "../../src-shared/route/route.ts";
import { TICKS_PER_EIGHTH, tick } from "../../src-shared/units.ts";
import { type HandScale, handY, laneX, leaveTick } from "./laneGeometry.ts";
import { type Box, shapeForm } from "./shapeForm.ts";
import { type BarWindow, stretchesWithin } from "./visible.ts";

/** A slope from one level to the next. Pixels. */
export type Slope = {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
};

/** A placement as the hand path draws it. */
export type HandBlock = {
  readonly placement: Placement;
  readonly box: Box;
  /** Outline of its shape's form, filling the box. */
  readonly form: string;
  /** How the hand goes on to the next placement; null where it stays or rests. */
  readonly slope: Slope | null;
};

/** Height of a block. */
export const BLOCK_HEIGHT = 34;
const SEAM = 1;

/**
 * The placements of which some part is shown, as level blocks; between neighbours at different
 * positions a slope that lies in the last eighth before the change.
 */
export const handBlocks = (
  placements: readonly Placement[],
  shown: BarWindow,
  scale: HandScale,
  perQuarter: number,
): readonly HandBlock[] =>
  stretchesWithin(placements, shown.from, shown.to).map((placement) => {
    const { start, length, voicing, index } = placement;
    const after = placements[index + 1];
    const moves =
      after !== undefined &&
      after.start === start + length &&
      after.voicing.position !== voicing.position;
    const left = laneX(start, perQuarter);
    const right = laneX(
      moves ? leaveTick(placement, tick(TICKS_PER_EIGHTH)) : start + length,
      perQuarter,
    );
    const y = handY(scale, voicing.positionMm);
    const box = {
      x: left,
      y: y - BLOCK_HEIGHT / 2,
      width: Math.max(SEAM, right - left - SEAM),
      height: BLOCK_HEIGHT,
    };
    const slope = moves
      ? {
          x1: right - SEAM,
          y1: y,
          x2: laneX(after.start, perQuarter),
          y2: handY(scale, after.voicing.positionMm),
        }
      : null;
    return { placement, box, slope, form: shapeForm(voicing.shape, box) };
  });
