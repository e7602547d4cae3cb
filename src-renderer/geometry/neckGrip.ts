import type { StringNumber } from "../../src-shared/neck/neck.ts";
import type { Voicing } from "../../src-shared/voicing/voicing.ts";
import type { Stop } from "./fingerMoves.ts";
import { fingerX, type NeckView, type StringView, stringY } from "./neckGeometry.ts";

const strings: readonly StringNumber[] = [1, 2, 3, 4, 5];

/** Whether a voicing's root lies under its finger on a string. */
export const rootOn = ({ root, frets }: Voicing, string: StringNumber): boolean =>
  root?.string === string && root.fret === frets[string - 1];

/** The places that a voicing stops, string 1 first, each with its finger (null: none is named). */
export const stopsOf = ({
  frets,
  fingers,
}: Voicing): readonly (Stop & { readonly finger: number | null })[] =>
  strings.flatMap((string) => {
    const fret = frets[string - 1] ?? null;
    return fret === null ? [] : [{ string, fret, finger: fingers[string - 1] ?? null }];
  });

/** A point on the screen. Pixels. */
export type Point = { readonly x: number; readonly y: number };

/** Where a voicing's places lie on the screen, string 1 first. */
export const gripPoints = (voicing: Voicing, view: NeckView, lines: StringView): readonly Point[] =>
  stopsOf(voicing).map(({ string, fret }) => ({
    x: fingerX(view, fret),
    y: stringY(lines, string),
  }));

/** Points as SVG writes a line through them. */
export const lineThrough = (points: readonly Point[]): string =>
  points.map(({ x, y }) => `${x},${y}`).join(" ");

/** A grip part of the way to another on the same strings; itself where those are others. */
export const between = (
  from: readonly Point[],
  to: readonly Point[],
  share: number,
): readonly Point[] =>
  from.length === to.length
    ? from.map(({ x, y }, index) => {
        const end = to[index] ?? { x, y };
        return { x: x + (end.x - x) * share, y: y + (end.y - y) * share };
      })
    : from;
