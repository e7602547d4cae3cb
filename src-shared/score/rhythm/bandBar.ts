import type { TimedBar, Timeline } from "../../chart/song.ts";
import type { Key } from "../../harmony/key.ts";
import { type Tick, tick } from "../../units.ts";
import type { Feel } from "../band.ts";
import { sectionLevels } from "./dynamics.ts";
import { type Groove, grooveOf } from "./groove.ts";
import { type RunNote, runOver, walkOver } from "./leadIn.ts";
import { type Piece, piecesOf } from "./pieces.ts";

/** One bar as the players of the rhythm section agree on it; ticks of the song. */
export type BandBar = {
  readonly bar: TimedBar;
  readonly groove: Groove;
  readonly pieces: readonly Piece[];
  /** How loud the band is here, 1 at full. */
  readonly level: number;
  /** It leads into a new section. */
  readonly fills: boolean;
  /** Bass notes that lead into the next bar; empty where there are none. */
  readonly run: readonly RunNote[];
  /** Where all strike together for the last time; null but in the song's last bar. */
  readonly ending: Tick | null;
};

/** What the rhythm section is told. */
export type BandPlan = {
  readonly key: Key;
  readonly feel: Pick<Feel, "dynamics" | "walkUps" | "fills">;
  /** The song starts over at its end, so that its last bar leads on and does not end. */
  readonly goesRound: boolean;
};

/** Bars in a phrase: at its end a walk-up comes of itself. */
const PHRASE_BARS = 4;
/** A chord that has lasted so many bars is walked out of wherever it ends. */
const LONG_BARS = 2;

/** Number of each bar within its section as played, from 0. */
const placesInSection = (bars: readonly TimedBar[]): readonly number[] => {
  let began = 0;
  return bars.map((bar, index) => {
    began = bar.startsSection ? index : began;
    return index - began;
  });
};

/**
 * The bars of a song with all that the players have to agree on. The bass walks into the next root at
 * the end of a phrase of four bars, of a section, and of a chord that has lasted two bars. The last
 * bar of a song that does not go round ends on the last note that the bass has in it, or on its last
 * chord where that comes later. Common practice, no published source.
 */
export const bandBars = (timeline: Timeline, plan: BandPlan): readonly BandBar[] => {
  const { bars } = timeline;
  const { feel, goesRound, key } = plan;
  const levels = sectionLevels(bars);
  const places = placesInSection(bars);
  const pieces = piecesOf(timeline);

  return bars.map((bar, index) => {
    const groove = grooveOf(bar, timeline.meter.unit);
    const isLast = index === bars.length - 1;
    const after = isLast && !goesRound ? null : (index + 1) % bars.length;
    const sectionEnds = after !== null && bars[after]?.startsSection === true;
    const last = pieces[index]?.at(-1);
    const next = after === null ? undefined : pieces[after]?.[0];
    const fills = feel.fills && sectionEnds;
    const phraseEnds = (places[index] ?? 0) % PHRASE_BARS === PHRASE_BARS - 1;

    const run = (): readonly RunNote[] => {
      if (!last || !next) {
        return [];
      }
      const joint = { bar, groove, last, next, key };
      if (fills) {
        return runOver(joint);
      }
      const isLong = bar.start + bar.length - last.began >= LONG_BARS * bar.length;
      return feel.walkUps && (isLong || phraseEnds || sectionEnds) ? walkOver(joint) : [];
    };

    return {
      bar,
      groove,
      pieces: pieces[index] ?? [],
      level: feel.dynamics ? (levels[index] ?? 1) : 1,
      fills,
      run: run(),
      ending:
        after === null && last?.chord
          ? tick(Math.max(bar.start + (groove.bass.at(-1) ?? 0), last.start))
          : null,
    };
  });
};
