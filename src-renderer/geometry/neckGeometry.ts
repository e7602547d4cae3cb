import { fretDistance } from "../../src-shared/neck/fretDistance.ts";
import type { StringNumber } from "../../src-shared/neck/neck.ts";
import { fret, type Millimetres } from "../../src-shared/units.ts";

/** A stretch of frets, both included; 0 is the nut. */
export type FretStretch = { readonly low: number; readonly high: number };

/** A part of the neck laid out across the screen. Pixels. */
export type NeckView = {
  readonly scaleLength: Millimetres;
  readonly frets: FretStretch;
  readonly left: number;
  readonly width: number;
  /** The nut is at the right, and the neck goes up to the left. */
  readonly nutRight: boolean;
};

/** Five strings laid out from top to bottom. Pixels. */
export type StringView = {
  readonly top: number;
  readonly gap: number;
  /** As a listener sees them; else string 1 is on top, as a player looks down and as tablature is printed. */
  readonly fifthOnTop: boolean;
};

/** Frets with a position marker on the board. Common practice, no published source. */
export const markerFrets: readonly number[] = [3, 5, 7, 10, 12, 15, 17, 19, 22];

/** Where the short string's peg sits. */
export const PEG_FRET = 5;

/** Below this width of the whole neck the highest frets grow too narrow for a dot. */
export const WHOLE_NECK_WIDTH = 880;
const MARGIN_FRETS = 2;

const fromNut = (view: NeckView, n: number): number => fretDistance(fret(n), view.scaleLength);

/** Pixels to a millimetre of neck. */
export const pxPerMm = (view: NeckView): number =>
  view.width / (fromNut(view, view.frets.high) - fromNut(view, view.frets.low));

/** x of the wire of a fret; fret 0 is the nut. True spacing: nut to fret n is L (1 - 2^(-n/12)). */
export const wireX = (view: NeckView, n: number): number => {
  const along = (fromNut(view, n) - fromNut(view, view.frets.low)) * pxPerMm(view);
  return view.nutRight ? view.left + view.width - along : view.left + along;
};

/** 1 where up the neck is to the right on the screen, -1 where it is to the left. */
export const upward = (view: NeckView): 1 | -1 => (view.nutRight ? -1 : 1);

/** x of a finger at a fret: the middle of the space behind its wire. */
export const fingerX = (view: NeckView, n: number): number =>
  (wireX(view, n - 1) + wireX(view, n)) / 2;

/** Width of the space behind the wire of a fret. */
export const spaceWidth = (view: NeckView, n: number): number =>
  Math.abs(wireX(view, n) - wireX(view, n - 1));

/** y of a string. */
export const stringY = (view: StringView, string: StringNumber): number =>
  view.top + (view.fifthOnTop ? 5 - string : string - 1) * view.gap;

/** 1 where string 5 is the lowest on the screen, -1 where it is the highest. */
export const toFifth = (view: StringView): 1 | -1 => (view.fifthOnTop ? -1 : 1);

/** The largest dot, up to `wanted`, that overlaps neither the next string nor the next fret. */
export const dotRadius = (view: NeckView, strings: StringView, wanted: number): number =>
  Math.max(6, Math.min(wanted, strings.gap * 0.44, spaceWidth(view, view.frets.high) * 0.56));

/**
 * The frets to show: the whole neck where there is room for it, else those that the song uses and a
 * margin on either side.
 */
export const fretStretch = (
  used: readonly number[],
  lastFret: number,
  width: number,
): FretStretch => {
  if (width >= WHOLE_NECK_WIDTH || used.length === 0) {
    return { low: 0, high: lastFret };
  }
  const low = Math.max(0, Math.min(...used) - 1 - MARGIN_FRETS);
  return { low, high: Math.min(lastFret, Math.max(...used) + MARGIN_FRETS) };
};

/** The whole frets of a stretch that have a space behind them, low to high. */
export const spacesOf = (frets: FretStretch): readonly number[] =>
  Array.from({ length: frets.high - frets.low }, (_, index) => frets.low + 1 + index);
