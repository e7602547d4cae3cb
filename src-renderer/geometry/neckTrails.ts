import type { Voicing } from "../../src-shared/voicing/voicing.ts";
import { fingerMoves } from "./fingerMoves.ts";
import { fingerX, type NeckView, type StringView, stringY } from "./neckGeometry.ts";

/** The way of one fingertip to its next place. Pixels. */
export type Trail = {
  /** It keeps its string (a guide), or crosses to another. */
  readonly kind: "guide" | "cross";
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
};

/**
 * The ways of all fingertips that are down before and after a change and do not stay where they
 * are, from dot's edge to dot's edge; none where the dots touch. Guides come first, so that crossing
 * ways lie over them.
 */
export const trails = (
  from: Voicing,
  to: Voicing,
  view: NeckView,
  strings: StringView,
  radius: number,
): readonly Trail[] => {
  const ways = fingerMoves(from, to).flatMap((move): Trail[] => {
    const { kind } = move;
    if ((kind !== "guide" && kind !== "cross") || !move.from || !move.to) return [];
    const [x1, y1] = [fingerX(view, move.from.fret), stringY(strings, move.from.string)];
    const [x2, y2] = [fingerX(view, move.to.fret), stringY(strings, move.to.string)];
    const length = Math.hypot(x2 - x1, y2 - y1);
    if (length <= 2 * radius) return [];
    const [dx, dy] = [(radius * (x2 - x1)) / length, (radius * (y2 - y1)) / length];
    return [{ kind, x1: x1 + dx, y1: y1 + dy, x2: x2 - dx, y2: y2 - dy }];
  });
  return [
    ...ways.filter(({ kind }) => kind === "guide"),
    ...ways.filter(({ kind }) => kind === "cross"),
  ];
};
