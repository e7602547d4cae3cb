import { chordName } from "../harmony/chord.ts";
import type { Placement } from "../route/route.ts";
import { sayShape } from "../wording/sayShape.ts";
import { words } from "../wordTable.ts";
import { engraved } from "./engraved.ts";
import type { Block } from "./flow.ts";
import type { HandOutSong } from "./handOut.ts";
import { partHead } from "./headings.ts";
import type { Mark } from "./page.ts";
import { cutText, plainType, setText, strongType, widthOf } from "./setText.ts";
import { shapeSign } from "./shapeSign.ts";
import { neckHeight, smallNeck } from "./smallNeck.ts";
import type { Typefaces } from "./typefaces.ts";

const GUTTER = 16;
const NAME = strongType(13);
const CAPTION = plainType(8.5);
const WHERE = plainType(8, "soft");
/** Narrower pictures have the fret under the neck alone. */
const LEAST_FOR_FRET = 76;
const NAME_HEIGHT = 16;
const CAPTION_HEIGHT = 12;

/** A grip that the route uses, and how often. */
type Used = { readonly placement: Placement; readonly times: number };

/** Each grip of each chord once, in the order in which the song comes to it. */
const gripsInOrder = (placements: readonly Placement[]): readonly Used[] => {
  const found = new Map<string, Used>();
  for (const placement of placements) {
    const key = `${chordName(placement.chord)} ${placement.voicing.frets.join()}`;
    const before = found.get(key);
    found.set(key, {
      placement: before?.placement ?? placement,
      times: (before?.times ?? 0) + 1,
    });
  }
  return [...found.values()];
};

const picture = (
  typefaces: Typefaces,
  song: HandOutSong,
  { placement, times }: Used,
  x: number,
  width: number,
): readonly Mark[] => {
  const { voicing, chord, bar } = placement;
  const neckTop = NAME_HEIGHT + 2;
  const captionTop = neckTop + neckHeight(width) + CAPTION_HEIGHT;
  const where = times === 1 ? words.handOut.oneBar(bar + 1) : words.handOut.fromBar(bar + 1, times);
  const name = cutText(typefaces, engraved(chordName(chord)), NAME, width);
  const nameWidth = widthOf(typefaces, name, NAME);
  const shape = sayShape(voicing, song.walk.neck.tuning);
  const placed = width < LEAST_FOR_FRET ? shape : words.handOut.shapeAt(shape, voicing.position);
  return [
    ...setText(typefaces, name, NAME, x, NAME_HEIGHT - 4),
    ...(nameWidth + 8 + widthOf(typefaces, where, WHERE) <= width
      ? setText(typefaces, where, WHERE, x + width, NAME_HEIGHT - 4, "right")
      : []),
    ...smallNeck(typefaces, voicing, x, neckTop, width),
    shapeSign(voicing.shape, x, captionTop - 2, 9, 7),
    ...setText(
      typefaces,
      widthOf(typefaces, placed, CAPTION) <= width - 13
        ? placed
        : cutText(typefaces, shape, CAPTION, width - 13),
      CAPTION,
      x + 13,
      captionTop - 2,
    ),
  ];
};

/** The route's grips as small necks, in the order in which the song comes to them, so many to a row. */
export const shapesPart = (
  typefaces: Typefaces,
  song: HandOutSong,
  width: number,
  perRow: number,
): readonly Block[] => {
  const grips = gripsInOrder(song.walk.route?.placements ?? []);
  const cell = (width - GUTTER * (perRow - 1)) / perRow;
  const rows = Array.from({ length: Math.ceil(grips.length / perRow) }, (_, row) =>
    grips.slice(row * perRow, (row + 1) * perRow),
  );
  if (rows.length === 0) return [];
  return [
    partHead(typefaces, words.handOut.shapes, words.handOut.shapesHint, width),
    ...rows.map(
      (row, index): Block => ({
        kind: "matter",
        name: words.handOut.shapes,
        height: NAME_HEIGHT + 2 + neckHeight(cell) + CAPTION_HEIGHT,
        before: index === 0 ? 6 : 12,
        keepsNext: false,
        marks: row.flatMap((used, at) =>
          picture(typefaces, song, used, at * (cell + GUTTER), cell),
        ),
      }),
    ),
  ];
};
