import type { StringNumber } from "../neck/neck.ts";
import type { Note } from "../score/score.ts";
import type { Mark } from "./page.ts";
import { circle, line, polyline, rectangle, solid } from "./pen.ts";
import { plainType, setText, strongType, widthOf } from "./setText.ts";
import type { StrokePlace } from "./tabRhythm.ts";
import type { TabSong } from "./tabSong.ts";
import type { Typefaces } from "./typefaces.ts";

/** Between two lines of the staff, in points. */
export const LINE_GAP = 7.8;
/** From the first line of the staff to the fifth. */
export const STAFF_HEIGHT: number = 4 * LINE_GAP;

const FRET = strongType(10);
const PICK = plainType(8.5);
/** Half the height of a figure, as a share of its size. */
const HALF_FIGURE = 0.325;
const SLIDE = 8;

/** Strings from the top of the staff; the short one lies lowest, as in printed banjo tablature. */
const strings: readonly StringNumber[] = [1, 2, 3, 4, 5];

/** Five lines from `left` to `right` under `top`. */
export const staffLines = (left: number, right: number, top: number): readonly Mark[] =>
  strings.map((_, index) =>
    line([left, top + index * LINE_GAP], [right, top + index * LINE_GAP], 0.5, "soft"),
  );

const fretText = ({ fret, letGo }: Note): string => (letGo ? `(${fret})` : `${fret}`);

const slideMark = (x: number, y: number, from: number, up: boolean): Mark => {
  const rise = up ? 2.4 : -2.4;
  return polyline(
    [
      [Math.max(from, x - SLIDE), y + rise],
      [x, y - rise],
    ],
    1,
  );
};

/** The frets of one stroke on their lines, with the slides into them. */
const fretMarks = (
  typefaces: Typefaces,
  tab: TabSong,
  { stroke, x }: StrokePlace,
  top: number,
): readonly Mark[] =>
  stroke.notes.flatMap((note): readonly Mark[] => {
    const y = top + (note.string - 1) * LINE_GAP;
    const text = fretText(note);
    const width = widthOf(typefaces, text, FRET);
    const from = tab.slidFrom.get(note);
    const left = x - width / 2;
    return [
      rectangle(left - 1, y - 3.6, width + 2, 7.2, { fill: "paper", stroke: null }),
      ...(from ? [slideMark(left - 1.2, y, left - 1.2 - SLIDE, from.fret < note.fret)] : []),
      ...setText(typefaces, text, FRET, x, y + FRET.size * HALF_FIGURE, "middle"),
    ];
  });

/** Over the staff: an accent's wedge, or the dot of a stroke that is stopped at once. */
const touchMarks = ({ stroke, x }: StrokePlace, top: number): readonly Mark[] => {
  const y = top - 5;
  const accent = stroke.notes.some((note) => note.accent);
  const damped = stroke.notes.some((note) => note.damped);
  return [
    ...(accent
      ? [
          polyline(
            [
              [x - 2.8, y - 1.7],
              [x + 2.8, y],
              [x - 2.8, y + 1.7],
            ],
            0.8,
          ),
        ]
      : []),
    ...(damped ? [circle(x, accent ? y - 4 : y, 1, solid)] : []),
  ];
};

const pickMarks = (
  typefaces: Typefaces,
  { stroke, x }: StrokePlace,
  y: number,
): readonly Mark[] => {
  const letters = [...new Set(stroke.notes.map(({ finger }) => finger))].join("");
  return letters === "" ? [] : setText(typefaces, letters, PICK, x, y, "middle");
};

/** What is written of one stroke: its frets, slides and touch, and the fingers that strike it. */
export const strokeMarks = (
  typefaces: Typefaces,
  tab: TabSong,
  place: StrokePlace,
  staffTop: number,
  pickLine: number,
): readonly Mark[] =>
  place.stroke.tiedFrom
    ? []
    : [
        ...fretMarks(typefaces, tab, place, staffTop),
        ...touchMarks(place, staffTop),
        ...pickMarks(typefaces, place, pickLine),
      ];
