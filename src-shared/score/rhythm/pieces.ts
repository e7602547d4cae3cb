import type { Timeline } from "../../chart/song.ts";
import type { Chord } from "../../harmony/chord.ts";
import { type Tick, tick } from "../../units.ts";

/** A chord for as long as it lasts within one bar; ticks of the song. */
export type Piece = {
  /** null is N.C. */
  readonly chord: Chord | null;
  readonly start: Tick;
  readonly end: Tick;
  /** Index of the stay it belongs to. */
  readonly stay: number;
  /** Where that stay began, in this bar or an earlier one. */
  readonly began: Tick;
};

/** For each bar of a song, the pieces of the stays that lie in it, in order. */
export const piecesOf = (timeline: Timeline): readonly (readonly Piece[])[] => {
  const { stays } = timeline;
  let stay = 0;
  return timeline.bars.map((bar) => {
    const barEnd = bar.start + bar.length;
    const pieces: Piece[] = [];
    let here = stays[stay];
    while (here && here.start < barEnd) {
      const stayEnd = here.start + here.length;
      pieces.push({
        chord: here.chord,
        start: tick(Math.max(here.start, bar.start)),
        end: tick(Math.min(stayEnd, barEnd)),
        stay,
        began: here.start,
      });
      if (stayEnd > barEnd) {
        break;
      }
      stay += 1;
      here = stays[stay];
    }
    return pieces;
  });
};
