import type { Neck } from "../../src-shared/neck/neck.ts";
import {
  dotRadius,
  fretStretch,
  type NeckView,
  type StringView,
  WHOLE_NECK_WIDTH,
} from "./neckGeometry.ts";
import { MARK_HEIGHT, type NeckPlace, type PlaceMark, placeMarks, rowCount } from "./neckPlaces.ts";

/** From which side the neck is seen. */
export type NeckSide = { readonly nutRight: boolean; readonly fifthOnTop: boolean };

/** Where everything stands on the picture of the neck. Pixels. */
export type NeckLayout = {
  readonly view: NeckView;
  readonly strings: StringView;
  readonly radius: number;
  readonly marks: readonly PlaceMark[];
  /** Height without the marks of other places under it. */
  readonly boardHeight: number;
  /** y of the arrow over the board. */
  readonly arrowY: number;
};

const ARROW_ZONE = 44;
const LOW_ARROW_ZONE = 38;
const NUMBER_ZONE = 24;
const LARGEST_DOT = 18;
/** Room at the nut, and after the last fret, where the board goes on a little. */
const NUT_ROOM = 8;
const END_ROOM = 16;

/** The width that the picture takes in a place of a width: with every place on it, the whole neck. */
export const neckWidth = (shown: number, places: readonly NeckPlace[]): number =>
  places.length > 0 ? Math.max(shown, WHOLE_NECK_WIDTH) : shown;

/** Lays the neck out; a low picture saves on the arrow's room. */
export const neckLayout = (
  neck: Neck,
  used: readonly number[],
  places: readonly NeckPlace[],
  side: NeckSide,
  size: { readonly width: number; readonly height: number },
): NeckLayout => {
  const view: NeckView = {
    scaleLength: neck.scaleLength,
    frets: fretStretch(used, neck.lastFret, size.width),
    left: side.nutRight ? END_ROOM : NUT_ROOM,
    width: Math.max(0, size.width - NUT_ROOM - END_ROOM),
    nutRight: side.nutRight,
  };
  const marks = placeMarks(places, view);
  const boardHeight = size.height - rowCount(marks) * MARK_HEIGHT;
  const arrowZone = boardHeight < 190 ? LOW_ARROW_ZONE : ARROW_ZONE;
  const gap = Math.max(16, (boardHeight - arrowZone - NUMBER_ZONE) / 5.1);
  const strings = { top: arrowZone + gap * 0.55, gap, fifthOnTop: side.fifthOnTop };
  return {
    view,
    strings,
    radius: dotRadius(view, strings, LARGEST_DOT),
    marks,
    boardHeight,
    arrowY: arrowZone - 12,
  };
};
