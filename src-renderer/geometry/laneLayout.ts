import { BLOCK_HEIGHT } from "./handBlocks.ts";
import { NOW_SHARE, quarterWidth, tabLineY } from "./laneGeometry.ts";

/** Where everything stands in the lanes. Pixels from the lanes' own left upper corner. */
export type LaneLayout = {
  readonly perQuarter: number;
  /** The tablature's bar lines stand this much before their beat: a note on it stays legible. */
  readonly inset: number;
  readonly gutter: number;
  readonly nowX: number;
  /** Height of the line with bar numbers and section names. */
  readonly ruler: number;
  /** Where the middle of a block may lie. */
  readonly handTop: number;
  readonly handBottom: number;
  /** Where the hand path's own ground ends. */
  readonly pathEnd: number;
  readonly tabTop: number;
  readonly tabGap: number;
  readonly strings: readonly { readonly string: number; readonly y: number }[];
  /** Down to here go bar lines and the now-line; the picking fingers stand below. */
  readonly gridHeight: number;
};

const RULER = 24;
const FINGERS = 22;
const BETWEEN = 18;
const GUTTER = 36;
/** Over the highest block, for a name that has no room inside. */
const NAME_ABOVE = 16;
const STRINGS = [1, 2, 3, 4, 5] as const;

/** The hand path takes about two thirds, the tablature the rest, within what stays legible. */
export const laneLayout = (width: number, height: number, zoom: number): LaneLayout => {
  const perQuarter = quarterWidth(width, zoom);
  const room = Math.max(0, height - RULER - FINGERS - BETWEEN);
  const tabGap = Math.min(18, Math.max(13, room / 3 / 4));
  const tabBottom = height - FINGERS - tabGap / 2;
  const tabTop = Math.max(RULER, tabBottom - 4 * tabGap);
  const handTop = RULER + NAME_ABOVE + BLOCK_HEIGHT / 2;
  return {
    perQuarter,
    inset: Math.min(10, perQuarter / 6),
    gutter: GUTTER,
    nowX: NOW_SHARE * width,
    ruler: RULER,
    handTop,
    handBottom: Math.max(handTop, tabTop - BETWEEN - BLOCK_HEIGHT / 2),
    pathEnd: Math.max(RULER, tabTop - BETWEEN * 0.6),
    tabTop,
    tabGap,
    strings: STRINGS.map((string) => ({ string, y: tabLineY(tabTop, tabGap, string) })),
    gridHeight: tabBottom + tabGap / 2,
  };
};
