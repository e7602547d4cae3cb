import type { Walk } from "../../src-shared/chartToScore.ts";
import { keyName } from "../../src-shared/harmony/readKey.ts";
import type { Note } from "../../src-shared/score/score.ts";
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
  }[];
  readonly travelMm: number;
  readonly notes: readonly {
    readonly tick: number;
    readonly ticks: number;
    readonly string: number;
    readonly fret: number;
    readonly midi: number;
    readonly finger: string;
    readonly slideTo?: true;
  }[];
};

const noteLine = (note: Note): PlanReport["notes"][number] => ({
  tick: note.tick,
  ticks: note.ticks,
  string: note.string,
  fret: note.fret,
  midi: note.midi,
  finger: note.finger,
  ...(note.slideInto ? { slideTo: true } : {}),
});

/** The walk as the command line reports it; a walk without a route has no placements. */
export const planReport = (walk: Walk): PlanReport => ({
  title: walk.song.title,
  key: keyName(walk.song.key),
  meter: [walk.song.meter.beats, walk.song.meter.unit],
  tempo: walk.song.tempo,
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
  changes: (walk.route?.legs ?? []).map(({ from, to, frets, distance }) => ({
    from,
    to,
    frets,
    mm: distance,
  })),
  travelMm: walk.route?.travel ?? 0,
  notes: walk.score.notes.map(noteLine),
});
