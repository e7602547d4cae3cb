import { type Midi, TICKS_PER_QUARTER, type Tick, tick } from "../../units.ts";
import type { Hit } from "../score.ts";
import type { BandBar } from "./bandBar.ts";
import { bassFifth, bassRoot } from "./chordPitches.ts";
import type { Piece } from "./pieces.ts";

/** The longest a bass note rings; the next one ends it sooner. */
const RINGS = TICKS_PER_QUARTER;

type Beat = { readonly tick: Tick; readonly piece: Piece };

/** The beats of a bar that the groove gives the bass; a chord that has none of them gets its first. */
const beatsOf = ({ bar, groove, pieces }: BandBar): readonly Beat[] =>
  pieces.flatMap((piece) => {
    const beats = groove.bass
      .map((at) => tick(bar.start + at))
      .filter((at) => at >= piece.start && at < piece.end);
    const without = beats.length === 0 && piece.began === piece.start;
    return (without ? [piece.start] : beats).map((at) => ({ tick: at, piece }));
  });

/**
 * The bass: a chord's root (or the tone after its slash) first, then its fifth and root in turn, until
 * a run leads into the next bar. Silent in N.C. Common practice, no published source.
 */
export const bassLine = (bars: readonly BandBar[]): readonly Hit[] => {
  const hits: Hit[] = [];
  let heard = -1;
  let onRoot = true;
  const strike = (at: Tick, pitch: Midi, { bar, level }: BandBar): void => {
    const ticks = tick(Math.min(RINGS, bar.start + bar.length - at));
    const accent = at === bar.start;
    hits.push({ part: "bass", tick: at, ticks, pitches: [pitch], accent, level });
  };
  for (const here of bars) {
    const runs = here.run[0]?.tick ?? Number.POSITIVE_INFINITY;
    for (const { tick: at, piece } of beatsOf(here)) {
      if (at >= runs || !piece.chord) {
        continue;
      }
      onRoot = heard === piece.stay ? !onRoot : true;
      heard = piece.stay;
      strike(at, onRoot ? bassRoot(piece.chord) : bassFifth(piece.chord), here);
    }
    for (const note of here.run) {
      strike(note.tick, note.pitch, here);
    }
  }
  return hits.map((hit, index) => {
    const next = hits[index + 1]?.tick ?? Number.POSITIVE_INFINITY;
    return hit.tick + hit.ticks > next ? { ...hit, ticks: tick(next - hit.tick) } : hit;
  });
};
