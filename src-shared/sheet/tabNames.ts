import { type Chord, chordName } from "../harmony/chord.ts";
import type { Tuning } from "../neck/neck.ts";
import type { Placement } from "../route/route.ts";
import { sayShape } from "../wording/sayShape.ts";
import { words } from "../wordTable.ts";
import { engraved } from "./engraved.ts";
import type { Mark } from "./page.ts";
import { plainType, setText, strongType, type Type, widthOf } from "./setText.ts";
import { shapeSign } from "./shapeSign.ts";
import type { TabBar } from "./tabSong.ts";
import type { Typefaces } from "./typefaces.ts";

const CHORD_SIZE = 12;
const SMALLEST = 5;
const FRET = strongType(8.5);
const SHAPE = plainType(8.5, "soft");
const SIGN = { width: 7, height: 6 };
const SPACE = 3;

/** A chord as it is printed; null is no chord. */
export const printedChord = (chord: Chord | null): string =>
  chord === null ? words.handOut.noChord : engraved(chordName(chord));

/** How wide a chord's name and its fret want to be over the staff, in points. */
export const nameWidth = (typefaces: Typefaces, chord: Chord | null): number =>
  Math.max(widthOf(typefaces, printedChord(chord), strongType(9)), SIGN.width + 12) + SPACE;

const fitted = (typefaces: Typefaces, text: string, ink: Type["ink"], room: number): Type => {
  const wanted = widthOf(typefaces, text, strongType(CHORD_SIZE));
  const size = Math.min(CHORD_SIZE, Math.max(SMALLEST, (CHORD_SIZE * room) / wanted));
  return strongType(size, ink);
};

/** Something that stands over a place of a system until the next one. */
type Over = { readonly x: number; readonly room: number };

const chordMark = (
  typefaces: Typefaces,
  chord: Chord | null,
  { x, room }: Over,
  y: number,
): readonly Mark[] => {
  const text = printedChord(chord);
  return setText(typefaces, text, fitted(typefaces, text, "ink", room), x, y);
};

const placementMark = (
  typefaces: Typefaces,
  { voicing }: Placement,
  tuning: Tuning,
  { x, room }: Over,
  y: number,
): readonly Mark[] => {
  const fret = `${voicing.position}`;
  const shape = sayShape(voicing, tuning);
  const fretAt = x + SIGN.width + 3;
  const shapeAt = fretAt + widthOf(typefaces, fret, FRET) + 4;
  const hasRoom = shapeAt + widthOf(typefaces, shape, SHAPE) <= x + room;
  return [
    shapeSign(voicing.shape, x, y, SIGN.width, SIGN.height),
    ...setText(typefaces, fret, FRET, fretAt, y),
    ...(hasRoom ? setText(typefaces, shape, SHAPE, shapeAt, y) : []),
  ];
};

/** Each with the room up to the next one, in points. */
const withRoom = <Item>(
  items: readonly Item[],
  xOf: (item: Item) => number,
  end: number,
): readonly { readonly item: Item; readonly over: Over }[] =>
  items.map((item, index) => {
    const x = xOf(item);
    const next = items[index + 1];
    return { item, over: { x, room: (next === undefined ? end : xOf(next)) - x - SPACE } };
  });

/** Lines over a system, in points. */
export type NameLines = { readonly chords: number; readonly shapes: number; readonly end: number };

/**
 * The chords over a system and the places they are held in. One that goes on from the system before
 * is shown again in brackets where there is room. `xOf` says where a tick of a bar stands.
 */
export const tabNames = (
  typefaces: Typefaces,
  bars: readonly TabBar[],
  tuning: Tuning,
  lines: NameLines,
  xOf: (bar: TabBar, tick: number) => number,
): readonly Mark[] => {
  const stays = bars.flatMap((bar) =>
    bar.stays.map(({ chord, start }) => ({ chord, x: xOf(bar, start) })),
  );
  const placements = bars.flatMap((bar) =>
    bar.placements.map((placement) => ({ placement, x: xOf(bar, placement.start) })),
  );
  const first = bars[0];
  const goesOn = first?.goesOn?.chord ?? null;
  const left = first ? xOf(first, first.bar.start) : 0;
  const again = goesOn === null ? "" : `(${printedChord(goesOn)})`;
  const againType = strongType(CHORD_SIZE - 2, "soft");
  const untilNext = (stays[0]?.x ?? lines.end) - left - SPACE;
  const hasRoom = again !== "" && widthOf(typefaces, again, againType) <= untilNext;
  return [
    ...(hasRoom ? setText(typefaces, again, againType, left, lines.chords) : []),
    ...withRoom(stays, ({ x }) => x, lines.end).flatMap(({ item, over }) =>
      chordMark(typefaces, item.chord, over, lines.chords),
    ),
    ...withRoom(placements, ({ x }) => x, lines.end).flatMap(({ item, over }) =>
      placementMark(typefaces, item.placement, tuning, over, lines.shapes),
    ),
  ];
};
