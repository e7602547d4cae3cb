import type { Hit, Note, Score } from "../../src-shared/score/score.ts";
import { indexAt } from "../../src-shared/score/window.ts";
import { type Tick, tick } from "../../src-shared/units.ts";

type Stroke = Note | Hit;

/** Where one score is taken up by another in mid-bar, in the round whose offset it is. */
export type Seam = {
  /** Where in the song. */
  readonly cut: Tick;
  readonly offset: Tick;
  /** The other score has them after the cut, but they were struck before it. */
  readonly done: ReadonlySet<Stroke>;
  /** The other score has them before the cut, and they were not struck yet. */
  readonly late: ReadonlySet<Stroke>;
};

type Taken = { readonly score: Score; readonly seam: Seam | null };

const playersOf = ({ notes, hits }: Score, from: Tick, to: Tick): Map<string, Stroke[]> => {
  const players = new Map<string, Stroke[]>();
  const within = ({ tick: at }: Stroke): boolean => at >= from && at < to;
  for (const [player, stroke] of [
    ...notes.filter(within).map((note) => ["banjo", note] as const),
    ...hits.filter(within).map((hit) => [hit.part, hit] as const),
  ]) {
    players.set(player, [...(players.get(player) ?? []), stroke]);
  }
  return players;
};

/**
 * What is to be left out and made up for where a player's strokes stay the same in number and move a
 * little within the bar, as they do with another feel. A stroke keeps its bar and its place among its
 * player's, so that they can be told apart by counting. Other players change at the cut.
 */
export const seamOf = (before: Taken, after: Score, cut: Tick, offset: Tick): Seam => {
  const done = new Set<Stroke>();
  const late = new Set<Stroke>();
  const bar = after.bars[indexAt(after.bars, cut)];
  const last = before.seam?.offset === offset ? before.seam : null;
  const wasStruck = (stroke: Stroke): boolean => {
    if (last?.done.has(stroke)) {
      return true;
    }
    return last?.late.has(stroke) ? last.cut < cut : stroke.tick < cut;
  };
  if (bar) {
    const end = tick(bar.start + bar.length);
    const old = playersOf(before.score, bar.start, end);
    for (const [player, strokes] of playersOf(after, bar.start, end)) {
      const were = old.get(player) ?? [];
      if (were.length === strokes.length) {
        strokes.forEach((stroke, index) => {
          const was = were[index];
          if (was && wasStruck(was) && stroke.tick >= cut) {
            done.add(stroke);
          } else if (was && !wasStruck(was) && stroke.tick < cut) {
            late.add(stroke);
          }
        });
      }
    }
  }
  return { cut, offset, done, late };
};
