import { type FitManner, fitRolls, type Remark } from "./fitRolls.ts";
import type { Pattern, PatternStroke } from "./pattern.ts";
import type { FifthUse } from "./picking.ts";
import type { StayShape } from "./segments.ts";

/** What the right hand plays while one chord is held. */
export type Played = {
  readonly manner: FitManner;
  /** One after the other, from the chord's start. */
  readonly pieces: readonly Pattern[];
  /** Their strokes, one for each eighth. */
  readonly strokes: readonly PatternStroke[];
  /** The eighth whose thumb may go to the open fifth string to free the hand; null where none may. */
  readonly cover: number | null;
  readonly remarks: readonly Remark[];
};

const hasFifth = ({ picks }: PatternStroke): boolean => picks.some(({ on }) => on === "fifth");

/** The stroke with its thumb on string 3 where it has the open fifth string. */
export const onThird = (stroke: PatternStroke): PatternStroke =>
  hasFifth(stroke)
    ? {
        ...stroke,
        picks: stroke.picks.flatMap((pick) => {
          if (pick.on !== "fifth") return [pick];
          return stroke.picks.some(({ on }) => on === 3) ? [] : [{ ...pick, on: 3 as const }];
        }),
      }
    : stroke;

/** The stroke with its thumb on the open fifth string. */
export const onFifth = (stroke: PatternStroke): PatternStroke => ({
  ...stroke,
  picks: stroke.picks.map((pick) => (pick.finger === "T" ? { ...pick, on: "fifth" } : pick)),
});

/** Whether nothing but the open fifth string is struck, so that the left hand is free meanwhile. */
export const isOpenStroke = ({ picks }: PatternStroke): boolean =>
  picks.length > 0 && picks.every(({ on }) => on === "fifth");

/**
 * What is played on a stay. `fifth` says where the open fifth string may sound; where it does not
 * belong to the chord that is never. The thumb strikes string 3 instead.
 */
export const playedOn = (
  stay: StayShape,
  manner: FitManner,
  patterns: readonly Pattern[],
  fifth: FifthUse,
): Played => {
  const fitted = fitRolls(stay, manner, patterns);
  const { remarks } = fitted;
  const asWritten = fitted.pieces.flatMap(({ strokes }) => strokes);
  const pieces =
    fifth === "always"
      ? fitted.pieces
      : fitted.pieces.map((piece) => ({ ...piece, strokes: piece.strokes.map(onThird) }));
  const last = fifth === "cover" ? asWritten.findLastIndex(isOpenStroke) : -1;
  return {
    manner,
    pieces,
    strokes: pieces.flatMap(({ strokes }) => strokes),
    cover: last < 0 ? null : last,
    remarks,
  };
};

/** The pattern that is being played so many eighths after the chord's start; null past its end. */
export const pieceAt = ({ pieces }: Pick<Played, "pieces">, eighth: number): Pattern | null => {
  let end = 0;
  for (const piece of pieces) {
    end += piece.strokes.length;
    if (eighth < end) {
      return piece;
    }
  }
  return null;
};
