import type { Meter } from "../../src-shared/chart/song.ts";
import type { Walk } from "../../src-shared/chartToScore.ts";
import { keyName } from "../../src-shared/harmony/readKey.ts";
import type { Leg, Route, Way } from "../../src-shared/route/route.ts";
import type { Note } from "../../src-shared/score/score.ts";
import { tempoOfEighth } from "../../src-shared/score/tempo.ts";
import { TICKS_PER_QUARTER } from "../../src-shared/units.ts";

/** The one JSON object that `plan` prints. Frets count from the nut; mm from the nut too. */
export type PlanReport = {
  readonly title: string;
  readonly key: string;
  readonly meter: readonly [number, number];
  readonly tempo: number;
  /** Open strings 1 to 5 without the capo, MIDI. */
  readonly tuning: readonly number[];
  readonly capo: number;
  readonly ticksPerQuarter: number;
  readonly placements: readonly {
    readonly bar: number;
    readonly tick: number;
    readonly ticks: number;
    readonly chord: string;
    readonly shape: string;
    readonly frets: readonly (number | null)[];
    readonly fingers: readonly (number | null)[];
    readonly position: number;
    readonly positionMm: number;
    readonly root: { readonly string: number; readonly fret: number } | null;
  }[];
  readonly changes: readonly {
    readonly from: number;
    readonly to: number;
    readonly frets: number;
    readonly mm: number;
    /** The time that the hand needs, and that the way below leaves it. */
    readonly needMs: number;
    readonly windowMs: number;
    /** The fastest tempo at which it can be made, in the meter's beats; null where nothing moves. */
    readonly ceilingBpm: number | null;
    readonly how: Way;
  }[];
  readonly travelMm: number;
  readonly notes: readonly {
    readonly tick: number;
    readonly ticks: number;
    readonly string: number;
    readonly fret: number;
    readonly midi: number;
    readonly finger: string;
    readonly accent?: true;
    readonly damped?: true;
    readonly slideTo?: true;
    readonly letGo?: true;
  }[];
  /** Where more than one route is asked for: the best of them first, which is the one above. */
  readonly alternatives?: readonly {
    readonly travelMm: number;
    readonly ceilingBpm: number | null;
    readonly placements: readonly {
      readonly chord: string;
      readonly shape: string;
      readonly position: number;
    }[];
  }[];
};

const noteLine = (note: Note): PlanReport["notes"][number] => ({
  tick: note.tick,
  ticks: note.ticks,
  string: note.string,
  fret: note.fret,
  midi: note.midi,
  finger: note.finger,
  ...(note.accent ? { accent: true } : {}),
  ...(note.damped ? { damped: true } : {}),
  ...(note.slideInto ? { slideTo: true } : {}),
  ...(note.letGo ? { letGo: true } : {}),
});

const rounded = (value: number): number => Math.round(value * 1000) / 1000;

const ceilingOf = (meter: Meter, leg: Leg): number | null =>
  leg.shortestEighth === null ? null : rounded(tempoOfEighth(meter, leg.shortestEighth));

/** A route told shortly, to be held against another. */
const outline = (meter: Meter, route: Route): NonNullable<PlanReport["alternatives"]>[number] => {
  const ceilings = route.legs.flatMap((leg) => ceilingOf(meter, leg) ?? []);
  return {
    travelMm: route.travel,
    ceilingBpm: ceilings.length > 0 ? Math.min(...ceilings) : null,
    placements: route.placements.map(({ chord, voicing }) => ({
      chord: chord.name,
      shape: voicing.shape,
      position: voicing.position,
    })),
  };
};

/**
 * The walk as the command line reports it; a walk without a route has no placements. `others` are
 * routes to choose from, the walk's own first; empty where none were asked for.
 */
export const planReport = (walk: Walk, others: readonly Route[]): PlanReport => ({
  title: walk.song.title,
  key: keyName(walk.song.key),
  meter: [walk.song.meter.beats, walk.song.meter.unit],
  tempo: walk.tempo,
  tuning: walk.neck.tuning.open,
  capo: walk.neck.capo,
  ticksPerQuarter: TICKS_PER_QUARTER,
  placements: (walk.route?.placements ?? []).map(({ bar, start, length, chord, voicing }) => ({
    bar: bar + 1,
    tick: start,
    ticks: length,
    chord: chord.name,
    shape: voicing.shape,
    frets: voicing.frets,
    fingers: voicing.fingers,
    position: voicing.position,
    positionMm: voicing.positionMm,
    root: voicing.root,
  })),
  changes: (walk.route?.legs ?? []).map((leg) => ({
    from: leg.from,
    to: leg.to,
    frets: leg.frets,
    mm: leg.distance,
    needMs: rounded(leg.need),
    windowMs: rounded(leg.window),
    ceilingBpm: ceilingOf(walk.song.meter, leg),
    how: leg.way,
  })),
  travelMm: walk.route?.travel ?? 0,
  notes: walk.score.notes.map(noteLine),
  ...(others.length > 0
    ? { alternatives: others.map((route) => outline(walk.song.meter, route)) }
    : {}),
});
