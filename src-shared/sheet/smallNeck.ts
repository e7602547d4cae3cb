import type { StringNumber } from "../neck/neck.ts";
import { ofString } from "../neck/pitchAt.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { Mark } from "./page.ts";
import { circle, line, outlined, rectangle, solid } from "./pen.ts";
import { setText, strongType } from "./setText.ts";
import type { Typefaces } from "./typefaces.ts";

const strings: readonly StringNumber[] = [1, 2, 3, 4];

/** Frets that a small neck always shows, so that it keeps its size. */
const COLUMNS = 5;
/** Parts of the width. */
const STRING_GAP = 0.125;
const DOT = 0.058;
const FINGER = 0.088;
const NUMBER = 0.105;
const LEAST_NUMBER = 8;
const OVERHANG = 0.055;

const numberSize = (width: number): number => Math.max(LEAST_NUMBER, width * NUMBER);

/** How high a small neck of a width is, its fret numbers included. */
export const neckHeight = (width: number): number =>
  width * (2 * OVERHANG + 3 * STRING_GAP) + numberSize(width) * 1.05;

/**
 * A grip on a piece of neck as the player looks down on it: string 1 on top, the fret of the index
 * finger numbered, fingers in black dots, the root in a ring, one finger across several strings as a
 * bar. Its left top corner is at x and y.
 */
export const smallNeck = (
  typefaces: Typefaces,
  voicing: Voicing,
  x: number,
  y: number,
  width: number,
): readonly Mark[] => {
  const lowest = voicing.position;
  const held = strings.flatMap((string) => {
    const fret = ofString(voicing.frets, string);
    return fret === null ? [] : [{ string, fret, finger: ofString(voicing.fingers, string) }];
  });
  const columns = Math.max(COLUMNS, ...held.map(({ fret }) => fret - lowest + 1));
  const step = width / columns;
  const gap = width * STRING_GAP;
  const hang = width * OVERHANG;
  const yOf = (string: number): number => y + hang + gap * (string - 1);
  const bottom = yOf(4) + hang;
  const xOf = (fret: number): number => x + step * (fret - lowest + 0.5);
  const radius = Math.min(width * DOT, step * 0.38);
  const wires = Array.from({ length: columns + 1 }, (_, index) => x + step * index);
  const spans = [1, 2, 3, 4].flatMap((finger) => {
    const under = held.filter((each) => each.finger === finger);
    const [first, last] = [under[0], under.at(-1)];
    const across = first !== undefined && last !== undefined && first !== last;
    return across && first.fret === last.fret ? [{ first, last }] : [];
  });
  return [
    rectangle(x, y, width, bottom - y, { fill: "paper", stroke: { ink: "line", width: 0.5 } }),
    ...wires.slice(1, -1).map((wire) => line([wire, y], [wire, bottom], 0.9, "line")),
    line([x, y], [x, bottom], 1.4, "line"),
    ...strings.map((string) => line([x, yOf(string)], [x + width, yOf(string)], 0.5, "soft")),
    ...spans.map(({ first, last }) =>
      rectangle(
        xOf(first.fret) - radius * 0.55,
        yOf(first.string),
        radius * 1.1,
        yOf(last.string) - yOf(first.string),
        solid,
      ),
    ),
    ...held.flatMap(({ string, fret, finger }): readonly Mark[] => {
      const isRoot = voicing.root?.string === string && voicing.root.fret === fret;
      const size = width * FINGER;
      return [
        ...(isRoot
          ? [
              circle(xOf(fret), yOf(string), radius + width * 0.022, {
                ...outlined(width * 0.012),
                fill: "paper",
              }),
            ]
          : []),
        circle(xOf(fret), yOf(string), radius, solid),
        ...(finger === null
          ? []
          : setText(
              typefaces,
              `${finger}`,
              strongType(size, "paper"),
              xOf(fret),
              yOf(string) + size * 0.325,
              "middle",
            )),
      ];
    }),
    ...setText(
      typefaces,
      `${lowest}`,
      strongType(numberSize(width)),
      xOf(lowest),
      bottom + numberSize(width) * 0.92,
      "middle",
    ),
  ];
};
