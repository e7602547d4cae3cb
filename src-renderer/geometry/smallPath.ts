import type { Placement } from "../../src-shared/route/route.ts";
import { TICKS_PER_EIGHTH, type Tick } from "../../src-shared/units.ts";
import { type HandScale, handY } from "./laneGeometry.ts";
import { shapeForm } from "./shapeForm.ts";

/** A whole route as one small picture: the paths that draw it. Pixels. */
export type SmallPath = {
  /** The placements, each in its shape's form. */
  readonly forms: string;
  /** The hand's ways between them. */
  readonly slopes: string;
};

/** Height of a placement in the small picture. */
export const SMALL_BLOCK = 10;
/** Narrower than this a placement would not be seen. */
const LEAST_WIDTH = 1;

const round = (n: number): number => Math.round(n * 100) / 100;

/**
 * A route from left to right in `width` pixels, the whole song of `length` ticks wide: a form for
 * each placement, and a line wherever the hand goes to another position. Empty where nothing is held.
 */
export const smallPath = (
  placements: readonly Placement[],
  length: Tick,
  scale: HandScale,
  width: number,
): SmallPath => {
  const xOf = (at: number): number => (at / length) * width;
  const yOf = (placement: Placement): number => handY(scale, placement.voicing.positionMm);
  const forms = placements.map((placement) => {
    const x = xOf(placement.start);
    return shapeForm(placement.voicing.shape, {
      x,
      y: yOf(placement) - SMALL_BLOCK / 2,
      width: Math.max(LEAST_WIDTH, xOf(placement.start + placement.length) - x - 1),
      height: SMALL_BLOCK,
    });
  });
  const slopes = placements.flatMap((placement, index) => {
    const next = placements[index + 1];
    if (!next || next.voicing.position === placement.voicing.position) return [];
    const end = placement.start + placement.length;
    const from = xOf(Math.max(placement.start, end - TICKS_PER_EIGHTH));
    return `M${round(from)} ${round(yOf(placement))}L${round(xOf(next.start))} ${round(yOf(next))}`;
  });
  return { forms: forms.join(""), slopes: slopes.join("") };
};
