import type { PatternStroke, PickFinger } from "./pattern.ts";
import type { Played } from "./played.ts";

const fingersOf = ({ picks }: PatternStroke): readonly PickFinger[] =>
  picks.map(({ finger }) => finger);

/** A pinch without some fingers; as it is where none of its fingers would be left. */
const without = (stroke: PatternStroke, fingers: readonly PickFinger[]): PatternStroke => {
  const free = stroke.picks.filter(({ finger }) => !fingers.includes(finger));
  return free.length > 0 && free.length < stroke.picks.length ? { ...stroke, picks: free } : stroke;
};

/** What a first stroke cannot do without: the thumb where it has it. */
const neededFor = (stroke: PatternStroke): readonly PickFinger[] =>
  fingersOf(stroke).includes("T") ? ["T"] : fingersOf(stroke);

const strokeOf = (played: Played, at: 0 | -1): PatternStroke => {
  const stroke = played.strokes.at(at);
  if (!stroke) {
    throw new Error("nothing is played on a chord; there is at least one stroke or rest");
  }
  return stroke;
};

/** The same value where the stroke is there already. */
const withStrokeAt = (played: Played, at: 0 | -1, stroke: PatternStroke): Played => {
  if (strokeOf(played, at) === stroke) {
    return played;
  }
  const piece = played.pieces.at(at);
  return {
    ...played,
    pieces: piece
      ? played.pieces.with(at, { ...piece, strokes: piece.strokes.with(at, stroke) })
      : played.pieces,
    strokes: played.strokes.with(at, stroke),
  };
};

/** Stays of a single eighth, from the last on, leave free what the stroke after them needs. */
const leavingFree = (run: readonly Played[]): readonly Played[] => {
  const ready: Played[] = [];
  let next: PatternStroke | null = null;
  for (const played of run.toReversed()) {
    const opening = strokeOf(played, 0);
    const left: Played =
      next && played.strokes.length === 1
        ? withStrokeAt(played, 0, without(opening, neededFor(next)))
        : played;
    ready.push(left);
    next = strokeOf(left, 0);
  }
  return ready.reverse();
};

/**
 * What is played on chords that follow one another without a rest, so that no finger strikes twice
 * running from one to the next. A chord of a single eighth leaves out the fingers that the next
 * stroke needs, a pinch at a chord's start those that have just struck. Where two pinches of the same
 * fingers meet, they share them. Chords where nothing changes are the same values.
 */
export const inTurn = (run: readonly Played[]): readonly Played[] => {
  const ready: Played[] = [];
  for (const played of leavingFree(run)) {
    const before = ready.at(-1);
    if (!before) {
      ready.push(played);
      continue;
    }
    const opening = strokeOf(played, 0);
    const end = strokeOf(before, -1);
    const [first] = fingersOf(opening);
    const isTaken = fingersOf(opening).every((finger) => fingersOf(end).includes(finger));
    const shared = isTaken && first !== undefined ? without(end, [first]) : end;
    ready[ready.length - 1] = withStrokeAt(before, -1, shared);
    ready.push(withStrokeAt(played, 0, without(opening, fingersOf(shared))));
  }
  return ready;
};
