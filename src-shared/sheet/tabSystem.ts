import type { Meter } from "../chart/song.ts";
import { noteNameOf } from "../harmony/noteName.ts";
import type { Tuning } from "../neck/neck.ts";
import { TICKS_PER_EIGHTH } from "../units.ts";
import { words } from "../wordTable.ts";
import { engraved } from "./engraved.ts";
import type { Block } from "./flow.ts";
import type { Mark } from "./page.ts";
import { line } from "./pen.ts";
import { cutText, plainType, setText, strongType } from "./setText.ts";
import { tabNames } from "./tabNames.ts";
import { type StrokePlace, tabRhythm } from "./tabRhythm.ts";
import type { TabBar, TabSong } from "./tabSong.ts";
import { LINE_GAP, STAFF_HEIGHT, staffLines, strokeMarks } from "./tabStaff.ts";
import type { Typefaces } from "./typefaces.ts";

/** What all systems of a song share. */
export type TabLook = {
  readonly tab: TabSong;
  readonly meter: Meter;
  readonly tuning: Tuning;
};

/** Left of the first bar line: names of the strings, number of the bar. */
export const TAB_GUTTER = 18;
/** Before the first note of a bar, with room for a slide into it; and after the last. */
const BAR_PAD = { left: 9, right: 3 };
const FARTHEST_IN = 9;
const SECTION_HEIGHT = 15;
const CHORD_LINE = 11;
const SHAPE_LINE = 21;
const STAFF_TOP = 32;
const STEM_GAP = 5;
const STEM_LENGTH = 10;
const PICK_GAP = 26;
const SECTION = strongType(11);

/** How wide an eighth is in a bar of a width, in points. */
export const cellWidth = (barWidth: number, eighths: number): number =>
  (barWidth - BAR_PAD.left - BAR_PAD.right) / eighths;

const barLine = (x: number, top: number, ends: TabBar["ends"]): readonly Mark[] => {
  const upright = (at: number, width: number): Mark =>
    line([at, top], [at, top + STAFF_HEIGHT], width);
  switch (ends) {
    case null:
      return [upright(x, 0.8)];
    case "section":
      return [upright(x - 2.4, 0.8), upright(x, 0.8)];
    case "song":
      return [upright(x - 3.4, 0.8), upright(x - 1, 2)];
  }
};

const gutterMarks = (
  typefaces: Typefaces,
  tuning: Tuning,
  bar: number,
  top: number,
): readonly Mark[] => [
  ...setText(typefaces, `${bar}`, plainType(8, "soft"), TAB_GUTTER - 5, top - 6, "right"),
  ...tuning.open.flatMap((pitch, index) => {
    const name = engraved(noteNameOf(pitch % 12, false));
    const shown = index === 4 ? name.toLowerCase() : name;
    const y = top + index * LINE_GAP + 2.3;
    return setText(typefaces, shown, plainType(7, "soft"), TAB_GUTTER - 5, y, "right");
  }),
];

/** One line of tablature: chords, shapes, five strings, rhythm and picking fingers. */
export const tabSystem = (
  typefaces: Typefaces,
  { tab, meter, tuning }: TabLook,
  bars: readonly TabBar[],
  barWidth: number,
): Block => {
  const [first, last] = [bars[0], bars.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError("a system without bars");
  const { startsSection, section } = first.bar;
  const label = startsSection && section !== null ? section : null;
  const head = label === null ? 0 : SECTION_HEIGHT;
  const top = head + STAFF_TOP;
  const right = TAB_GUTTER + barWidth * bars.length;
  const leftOf = (bar: TabBar): number => TAB_GUTTER + barWidth * (bar.bar.index - first.bar.index);
  const xOf = (bar: TabBar, tick: number): number => {
    const cell = cellWidth(barWidth, bar.bar.length / TICKS_PER_EIGHTH);
    return leftOf(bar) + BAR_PAD.left + ((tick - bar.bar.start) / TICKS_PER_EIGHTH) * cell;
  };
  const placesIn = (bar: TabBar): readonly StrokePlace[] => {
    const cell = cellWidth(barWidth, bar.bar.length / TICKS_PER_EIGHTH);
    // In wide bars too a note stands under the beginning of its chord's name.
    const half = Math.min(cell / 2, FARTHEST_IN);
    return bar.strokes.map((stroke) => ({
      stroke,
      x: xOf(bar, bar.bar.start + stroke.at) + half,
    }));
  };
  const stemTop = top + STAFF_HEIGHT + STEM_GAP;
  const lines = { middle: top + STAFF_HEIGHT / 2, stemTop, stemFoot: stemTop + STEM_LENGTH };
  const pickLine = top + STAFF_HEIGHT + PICK_GAP;
  const names = { chords: head + CHORD_LINE, shapes: head + SHAPE_LINE, end: right };
  let before = TAB_GUTTER;
  return {
    kind: "system",
    name: words.handOut.barsTo(first.bar.index + 1, last.bar.index + 1),
    height: pickLine + 2.5,
    before: 13,
    keepsNext: false,
    marks: [
      ...(label === null
        ? []
        : setText(
            typefaces,
            cutText(typefaces, label, SECTION, right - TAB_GUTTER),
            SECTION,
            TAB_GUTTER,
            9,
          )),
      ...gutterMarks(typefaces, tuning, first.bar.index + 1, top),
      ...staffLines(TAB_GUTTER, right, top),
      line([TAB_GUTTER, top], [TAB_GUTTER, top + STAFF_HEIGHT], 0.8),
      ...bars.flatMap((bar) => barLine(leftOf(bar) + barWidth, top, bar.ends)),
      ...tabNames(typefaces, bars, tuning, names, xOf),
      ...bars.flatMap((bar) => {
        const places = placesIn(bar);
        const from = before;
        before = places.at(-1)?.x ?? before;
        return [
          ...tabRhythm(typefaces, places, meter, lines, from),
          ...places.flatMap((place) => strokeMarks(typefaces, tab, place, top, pickLine)),
        ];
      }),
    ],
  };
};
