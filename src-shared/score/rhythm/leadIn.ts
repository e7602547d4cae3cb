import type { TimedBar } from "../../chart/song.ts";
import type { Key } from "../../harmony/key.ts";
import { scaleUnder } from "../../harmony/scale.ts";
import { type Midi, type Tick, tick } from "../../units.ts";
import { bassRoot } from "./chordPitches.ts";
import type { Groove } from "./groove.ts";
import type { Piece } from "./pieces.ts";
import { walkInto } from "./walkUp.ts";

/** One note of a bass run; its tick is one of the song. */
export type RunNote = { readonly tick: Tick; readonly pitch: Midi };

/** The end of a bar and what comes after it. */
type Joint = {
  readonly bar: TimedBar;
  readonly groove: Groove;
  /** The last piece of the bar. */
  readonly last: Piece;
  /** The first piece of the bar that follows. */
  readonly next: Piece;
  readonly key: Key;
};

const play = (ticks: readonly Tick[], { last, next, key }: Joint): readonly RunNote[] => {
  if (!last.chord || !next.chord || ticks.length < 2) {
    return [];
  }
  const [from, to] = [bassRoot(last.chord), bassRoot(next.chord)];
  const walked = walkInto(from, to, scaleUnder(last.chord, key), ticks.length > 2 ? 3 : 2);
  const places = ticks.slice(ticks.length - walked.length);
  return walked.flatMap((pitch, step) => {
    const at = places[step];
    return at === undefined ? [] : [{ tick: at, pitch }];
  });
};

/** Where the bass may run: the chord has been heard before. */
const room = ({ bar, groove, last }: Joint): readonly Tick[] =>
  groove.run.map((at) => tick(bar.start + at)).filter((at) => at > last.began);

/** Two notes into the root of the chord that follows; none where that is the bass's note already. */
export const walkOver = (joint: Joint): readonly RunNote[] => {
  const { last, next } = joint;
  const moves = last.chord && next.chord && bassRoot(last.chord) !== bassRoot(next.chord);
  return moves ? play(room(joint).slice(-2), joint) : [];
};

/** As many notes as the bar has room for, at most three, into a new section: onto the same root too. */
export const runOver = (joint: Joint): readonly RunNote[] => play(room(joint), joint);
