import type { TimedBar } from "../../src-shared/chart/song.ts";
import type { StringNumber } from "../../src-shared/neck/neck.ts";
import type { Glide, Hit, Note, Score } from "../../src-shared/score/score.ts";
import { ticksPerBar } from "../../src-shared/score/tempo.ts";
import { fret, midi, TICKS_PER_EIGHTH, tick } from "../../src-shared/units.ts";

/** A note in few words: when (in eighths), where, and how long it sounds (in eighths). */
export type Pluck = {
  readonly at: number;
  readonly string: StringNumber;
  readonly fret: number;
  readonly lasts: number;
  readonly glide?: { readonly from: number; readonly to: number; readonly toFret: number };
};

/** Open G, string 1 first: D4 B3 G3 D3 G4. Common practice, no published source. */
export const OPEN_G = [62, 59, 55, 50, 67] as const;

/** The sounding pitch of a place; frets of the fifth string count from its own peg at the fifth. */
export const pitchOf = (string: StringNumber, place: number): number =>
  (OPEN_G[string - 1] ?? 0) + (string === 5 && place > 0 ? place - 5 : place);

const eighths = (count: number): ReturnType<typeof tick> => tick(count * TICKS_PER_EIGHTH);

const noteOf = (pluck: Pluck): Note => {
  const glide: Glide | null = pluck.glide
    ? {
        start: eighths(pluck.glide.from),
        end: eighths(pluck.glide.to),
        toFret: fret(pluck.glide.toFret),
      }
    : null;
  return {
    tick: eighths(pluck.at),
    ticks: eighths(1),
    until: eighths(pluck.at + pluck.lasts),
    string: pluck.string,
    fret: fret(pluck.fret),
    midi: midi(pitchOf(pluck.string, pluck.fret)),
    finger: pluck.string === 1 ? "M" : pluck.string === 2 ? "I" : "T",
    accent: false,
    damped: false,
    slideInto: false,
    letGo: false,
    glide,
    placement: 0,
  };
};

/** A score of whole bars of 2/2 with these notes and hits, each list put in order. */
export const handMadeScore = (
  bars: number,
  plucks: readonly Pluck[],
  hits: readonly Hit[] = [],
): Score => {
  const meter = { beats: 2, unit: 2 } as const;
  const length = ticksPerBar(meter);
  return {
    meter,
    length: tick(bars * length),
    bars: Array.from(
      { length: bars },
      (_, index): TimedBar => ({
        index,
        start: tick(index * length),
        length,
        section: null,
        startsSection: index === 0,
        written: index,
      }),
    ),
    notes: plucks.map(noteOf).toSorted((a, b) => a.tick - b.tick),
    hits: hits.toSorted((a, b) => a.tick - b.tick),
  };
};

/** A forward roll on a closed chord, string 3-2-1 and the open fifth between. */
export const roll = (bars: number, position: number): readonly Pluck[] =>
  Array.from({ length: bars * 8 }, (_, at): Pluck => {
    const string = ([3, 2, 1, 5, 3, 2, 1, 5] as const)[at % 8] ?? 1;
    return { at, string, fret: string === 5 ? 0 : position, lasts: 4 };
  });

/** Bass on 1 and 3, chop and guitar on 2 and 4, a click on every half note. */
export const rhythm = (bars: number): readonly Hit[] =>
  Array.from({ length: bars * 4 }, (_, quarter): readonly Hit[] => {
    const at = eighths(quarter * 2);
    const even = quarter % 2 === 0;
    const bass: Hit = {
      part: "bass",
      tick: at,
      ticks: eighths(2),
      pitches: [midi(quarter % 4 === 0 ? 31 : 38)],
      accent: quarter % 4 === 0,
      level: 1,
    };
    const chop: Hit = {
      part: "chop",
      tick: at,
      ticks: tick(120),
      pitches: [midi(55), midi(59), midi(62)],
      accent: false,
      level: 1,
    };
    const click: Hit = {
      part: "click",
      tick: at,
      ticks: eighths(2),
      pitches: [],
      accent: quarter % 4 === 0,
      level: 1,
    };
    const guitar: Hit = { ...chop, part: "guitar", pitches: [55, 59, 62, 67].map(midi) };
    return even ? [bass, click] : [chop, guitar];
  }).flat();
