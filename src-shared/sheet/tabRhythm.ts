import type { Meter } from "../chart/song.ts";
import { beamTicks } from "../exchange/staffNotes.ts";
import type { WrittenStroke } from "../exchange/strokesInBars.ts";
import type { Mark } from "./page.ts";
import { bow, circle, line, polygon, solid } from "./pen.ts";
import { plainType, setText } from "./setText.ts";
import type { Typefaces } from "./typefaces.ts";

/** Where a bar's strokes stand, in points. */
export type StrokePlace = {
  readonly stroke: WrittenStroke;
  readonly x: number;
};

/** Lines between which a rhythm is drawn, in points. */
export type RhythmLines = {
  /** Middle of the staff, where rests stand. */
  readonly middle: number;
  /** Where stems begin and end under the staff. */
  readonly stemTop: number;
  readonly stemFoot: number;
};

const STEM = 0.8;
const BEAM = 2;
const FLAG = 5;
const REST_SIZE = 23;

/** Signs of the music font (Unicode, block Musical Symbols). */
const restSigns = {
  whole: "\u{1d13b}",
  half: "\u{1d13c}",
  quarter: "\u{1d13d}",
  eighth: "\u{1d13e}",
  "16th": "\u{1d13f}",
  "32nd": "\u{1d140}",
} as const;

const restMark = (
  typefaces: Typefaces,
  { stroke, x }: StrokePlace,
  { middle }: RhythmLines,
): readonly Mark[] => {
  const { type, dots } = stroke.value;
  const sign = restSigns[type];
  return [
    ...setText(typefaces, sign, plainType(REST_SIZE), x, middle + REST_SIZE * 0.46, "middle"),
    ...(dots === 1 ? [circle(x + 7, middle - 2, 1, solid)] : []),
  ];
};

const isBeamed = ({ stroke }: StrokePlace): boolean =>
  stroke.notes.length > 0 && ["eighth", "16th", "32nd"].includes(stroke.value.type);

/** A bar without a note has one whole rest in its middle, in any metre. */
const emptyBar = (
  typefaces: Typefaces,
  places: readonly StrokePlace[],
  { middle }: RhythmLines,
): readonly Mark[] => {
  const xs = places.map(({ x }) => x);
  const x = (Math.min(...xs) + Math.max(...xs)) / 2;
  return places.length === 0
    ? []
    : setText(
        typefaces,
        restSigns.whole,
        plainType(REST_SIZE),
        x,
        middle + REST_SIZE * 0.46,
        "middle",
      );
};

/** Neighbours under one beam. */
const beamsOf = (places: readonly StrokePlace[], meter: Meter): readonly StrokePlace[][] => {
  const beams: StrokePlace[][] = [];
  let open: number | null = null;
  for (const place of places) {
    const group = isBeamed(place) ? Math.floor(place.stroke.at / beamTicks(meter)) : null;
    if (group === null) {
      open = null;
    } else if (group === open) {
      beams.at(-1)?.push(place);
    } else {
      beams.push([place]);
      open = group;
    }
  }
  return beams;
};

const beamMark = (beam: readonly StrokePlace[], { stemFoot }: RhythmLines): readonly Mark[] => {
  const [first, last] = [beam[0], beam.at(-1)];
  if (first === undefined || last === undefined) return [];
  const left = first.x - STEM / 2;
  const right = last === first ? first.x + FLAG : last.x + STEM / 2;
  const lift = last === first ? 3 : 0;
  return [
    polygon(
      [
        [left, stemFoot - BEAM],
        [right, stemFoot - BEAM - lift],
        [right, stemFoot - lift],
        [left, stemFoot],
      ],
      solid,
    ),
  ];
};

const stemMark = ({ stroke, x }: StrokePlace, lines: RhythmLines): readonly Mark[] => {
  const { type, dots } = stroke.value;
  const { stemTop, stemFoot } = lines;
  if (type === "whole") return [];
  // A half note's stem is short, as in printed tablature. Common practice, no published source.
  const top = type === "half" ? (stemTop + stemFoot) / 2 : stemTop;
  return [
    line([x, top], [x, stemFoot], STEM),
    ...(dots === 1 ? [circle(x + 3, stemFoot - 1.2, 1, solid)] : []),
  ];
};

/**
 * The rhythm of a bar under its staff: stems, beams and dots, ties, and rests in the staff. `before` is
 * where the stroke before the first one stands, or the bar line.
 */
export const tabRhythm = (
  typefaces: Typefaces,
  places: readonly StrokePlace[],
  meter: Meter,
  lines: RhythmLines,
  before: number,
): readonly Mark[] =>
  places.every(({ stroke }) => stroke.notes.length === 0)
    ? emptyBar(typefaces, places, lines)
    : [
        ...places.flatMap((place, index): readonly Mark[] => {
          if (place.stroke.notes.length === 0) return restMark(typefaces, place, lines);
          const from = places[index - 1]?.x ?? before;
          const tie = place.stroke.tiedFrom
            ? [bow([from + 1, lines.stemFoot + 1.5], [place.x - 1, lines.stemFoot + 1.5], 2.5, 0.8)]
            : [];
          return [...stemMark(place, lines), ...tie];
        }),
        ...beamsOf(places, meter).flatMap((beam) => beamMark(beam, lines)),
      ];
