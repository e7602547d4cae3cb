import type { Meter } from "../../src-shared/chart/song.ts";
import { fretDistance } from "../../src-shared/neck/fretDistance.ts";
import type { Leg, Placement } from "../../src-shared/route/route.ts";
import { secondsToTicks } from "../../src-shared/score/tempo.ts";
import {
  type Bpm,
  fret,
  type Millimetres,
  seconds,
  TICKS_PER_QUARTER,
} from "../../src-shared/units.ts";

/** How score time runs: beats of the meter a minute. */
export type Timing = { readonly meter: Meter; readonly tempo: Bpm };

/** The share of the lanes' width that lies before now. */
export const NOW_SHARE = 0.3;

/** How much wider or narrower than usual time can be drawn, from the most bars shown to the fewest. */
export const laneZooms: readonly number[] = [0.6, 0.8, 1, 1.4, 2];

/** The next zoom with more (-1) or fewer (1) bars on the screen; the same at the end of the row. */
export const zoomStep = (zoom: number, by: -1 | 1): number =>
  by > 0
    ? (laneZooms.find((each) => each > zoom) ?? zoom)
    : (laneZooms.findLast((each) => each < zoom) ?? zoom);

/** Narrower than this the fret numbers of two eighths would touch. */
const LEAST_QUARTER = 28;

/** How wide a quarter note is, for lanes of a width: some five bars at a desk, two on a telephone. */
export const quarterWidth = (laneWidth: number, zoom: number): number =>
  Math.max(LEAST_QUARTER, Math.min(58, Math.max(34, laneWidth / 22)) * zoom);

/** x of a tick on the lanes' common axis; the song starts at 0. */
export const laneX = (tick: number, perQuarter: number): number =>
  (tick / TICKS_PER_QUARTER) * perQuarter;

/** How far the lanes are pushed so that `tick` lies under the now-line. Whole device steps are not needed. */
export const laneShift = (tick: number, perQuarter: number, laneWidth: number): number =>
  NOW_SHARE * laneWidth - laneX(tick, perQuarter);

/** The tick that stands for `tick` where motion is unwanted: the beat it lies in. */
export const steppedTick = (tick: number, ticksPerBeat: number): number =>
  Math.floor(tick / ticksPerBeat) * ticksPerBeat;

/** The neck stood upright: which millimetres lie between `top` and `bottom` (pixels). */
export type HandScale = {
  readonly lowMm: number;
  readonly highMm: number;
  readonly top: number;
  readonly bottom: number;
};

/** So that a song that stays in one place is not drawn as if it moved. */
const LEAST_SPAN_MM = 120;

/**
 * The scale that holds every position of a route: the same millimetres as the neck's, at one rate
 * from bottom to top. At least 120 mm, about four frets in the middle of the neck.
 */
export const handScale = (
  placements: readonly Placement[],
  top: number,
  bottom: number,
): HandScale => {
  const positions = placements.map((placement): number => placement.voicing.positionMm);
  const low = positions.length > 0 ? Math.min(...positions) : 0;
  const high = positions.length > 0 ? Math.max(...positions) : LEAST_SPAN_MM;
  const spare = Math.max(0, LEAST_SPAN_MM - (high - low)) / 2;
  return { lowMm: low - spare, highMm: high + spare, top, bottom };
};

/** y of a place on the neck, in millimetres from the nut; higher up the neck is higher up. */
export const handY = (scale: HandScale, mm: number): number =>
  scale.bottom - ((mm - scale.lowMm) / (scale.highMm - scale.lowMm)) * (scale.bottom - scale.top);

/** A fret of the neck on the hand path. Pixels. */
export type FretLine = { readonly fret: number; readonly y: number };

/** Nearer than this the numbers of two frets would touch. */
const LEAST_LABEL_GAP = 14;

/**
 * Those of the frets given (low to high) whose wires lie within the scale, each with its y; one that
 * lies too near the one before it for its number to be read is left out.
 */
export const fretLines = (
  scale: HandScale,
  frets: readonly number[],
  scaleLength: Millimetres,
): readonly FretLine[] => {
  const kept: FretLine[] = [];
  for (const n of frets) {
    const mm = fretDistance(fret(n), scaleLength);
    const y = handY(scale, mm);
    const before = kept.at(-1);
    const clear = !before || before.y - y >= LEAST_LABEL_GAP;
    if (mm >= scale.lowMm && mm <= scale.highMm && clear) kept.push({ fret: n, y });
  }
  return kept;
};

/** y of a string's line in the tablature: string 1 on the top line. */
export const tabLineY = (top: number, gap: number, string: number): number =>
  top + (string - 1) * gap;

/**
 * The tick at which the hand leaves for a change that is due at a tick: as long before it as it
 * needs, or as its way allows it where that is less; never before it is there.
 */
export const leaveTick = (
  from: Pick<Placement, "start">,
  due: number,
  leg: Pick<Leg, "need" | "window">,
  timing: Timing,
): number => {
  const taken = seconds(Math.min(leg.need, leg.window) / 1000);
  return Math.max(from.start, due - secondsToTicks(taken, timing.meter, timing.tempo));
};
