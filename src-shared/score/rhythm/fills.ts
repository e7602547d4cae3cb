import type { Tick } from "../../units.ts";
import type { BandBar } from "./bandBar.ts";

/** How much louder the last stroke of a fill is than its first. */
const SWELL = 0.25;

/** Where the chop plays in a bar, in ticks from the bar line: more of it before a new section. */
export const chopPlaces = ({
  groove,
  fills,
}: Pick<BandBar, "groove" | "fills">): readonly Tick[] => (fills ? groove.fill : groove.chop);

/**
 * How much louder than the section a stroke of a fill is, so that the bar leads on; 1 elsewhere. From
 * 1 for the first of `count` strokes to 1.25 for the last. The figure is our own.
 * @example swell(true, 3, 4) // => 1.25
 */
export const swell = (fills: boolean, index: number, count: number): number =>
  fills && count > 1 ? 1 + (SWELL * index) / (count - 1) : 1;
