import { type ChartReading, readChart } from "./chart/readChart.ts";
import type { Song, Timeline } from "./chart/song.ts";
import { songToPlay } from "./chart/songToPlay.ts";
import { unfold } from "./chart/unfold.ts";
import type { Diagnostic } from "./diagnostic.ts";
import { readTuning } from "./harmony/readTuning.ts";
import type { Neck } from "./neck/neck.ts";
import { neckFor } from "./neck/neckFor.ts";
import { tunings } from "./neck/tuningTable.ts";
import type { Pattern } from "./roll/pattern.ts";
import { type Picking, plainPicking } from "./roll/picking.ts";
import { alternatives, routesInTurn } from "./route/alternatives.ts";
import { type Explanation, explain } from "./route/explain.ts";
import { firstUnlike } from "./route/firstUnlike.ts";
import { handOf } from "./route/handTable.ts";
import type { Hand } from "./route/movement.ts";
import { type Plan, planRoute } from "./route/planRoute.ts";
import type { PlanRequest } from "./route/problem.ts";
import type { Route } from "./route/route.ts";
import { type Slot, slotsOf } from "./route/slot.ts";
import { arrange } from "./score/arrange.ts";
import { type Feel, usualFeel } from "./score/band.ts";
import { withBand } from "./score/rhythm/rhythmSection.ts";
import type { Score } from "./score/score.ts";
import { eighthNote } from "./score/tempo.ts";
import type { PlanSettings } from "./settings.ts";
import { type Bpm, bpm, fret } from "./units.ts";
import { sayClash, sayNoVoicing } from "./wording/sayNoVoicing.ts";
import { sayRemarks } from "./wording/sayRemarks.ts";
import { sayUnlike } from "./wording/sayUnlike.ts";

/** Everything that a chart text and settings come to. */
export type Walk = {
  /** In the key it is played in. */
  readonly song: Song;
  readonly neck: Neck;
  readonly timeline: Timeline;
  /** What it is played at, in beats of the meter a minute. */
  readonly tempo: Bpm;
  /** What the planner was asked for. */
  readonly request: PlanRequest;
  /**
   * What the route places, in order: `route.placements[i]` holds `slots[i]`, and on it the right hand
   * plays `slots[i].played`.
   */
  readonly slots: readonly Slot[];
  /** null where no route exists within the settings; `notes` then says why. */
  readonly route: Route | null;
  readonly score: Score;
  /** What the chart's reader and the planner have to say. */
  readonly notes: readonly Diagnostic[];
  /** What was read, with the places of bars and chords in the text. */
  readonly reading: ChartReading;
};

/** A song too tangled to be held the same each time is planned freely, and that is said. */
const freedomOf = (
  { placements }: Route,
  { aim, alike }: PlanRequest,
  slots: readonly Slot[],
  { bars }: ChartReading,
): readonly Diagnostic[] => {
  if (!alike || aim === "variety") {
    return [];
  }
  const held = placements.map(({ voicing }) => voicing);
  const unlike = firstUnlike(slots, held);
  return unlike ? [sayUnlike(unlike, bars[unlike.written])] : [];
};

const plannersNotes = (
  plan: Plan,
  request: PlanRequest,
  { tuning }: Neck,
  slots: readonly Slot[],
  reading: ChartReading,
): readonly Diagnostic[] => {
  switch (plan.kind) {
    case "route":
      return freedomOf(plan.route, request, slots, reading);
    case "clash":
      return [sayClash(plan.slot, plan.pins, reading.bars[plan.slot.written])];
    case "unreachable":
      return plan.slots.map((slot) =>
        sayNoVoicing(slot, request, tuning, reading.bars[slot.written]),
      );
  }
};

/**
 * The whole way but for the band: chart text -> song -> timeline -> route -> the banjo's score.
 * `playTempo` counts beats of the song's meter a minute; null is the chart's own. Any text and any
 * settings give a Walk; what is wrong with them stands in its notes. A play key that is no key is
 * passed over. `patterns` are the player's own, which `picking` names; `ownHand` is the hand that they
 * have accepted as theirs, or null.
 */
export const banjoWalk = (
  text: string,
  settings: PlanSettings,
  playTempo: number | null,
  picking: Picking = plainPicking,
  patterns: readonly Pattern[] = [],
  ownHand: Hand | null = null,
): Walk => {
  const reading = readChart(text);
  const song = songToPlay(reading.value, settings.playKey);
  const tuning = readTuning(song.tuning);
  const neck = neckFor(tuning.ok ? tuning.tuning : tunings[0], song.capo);
  const timeline = unfold(song);
  const { aim, shapes, strings, goesRound, perChord, alike, pins } = settings;
  const range = { low: fret(settings.fretLow), high: fret(settings.fretHigh) };
  const tempo = playTempo === null ? song.tempo : bpm(playTempo);
  const eighth = eighthNote(song.meter, tempo);
  const hand = handOf(settings.hand, ownHand);
  const request: PlanRequest = {
    aim,
    shapes,
    strings,
    goesRound,
    range,
    perChord,
    hand,
    eighth,
    alike,
    pins,
    picking,
    patterns,
  };
  const slots = slotsOf(timeline, neck, request);
  const plan = planRoute(timeline, neck, request, slots);
  const route = plan.kind === "route" ? plan.route : null;
  const score = arrange(timeline, neck, route, slots, eighth);
  const notes = [
    ...reading.notes,
    ...plannersNotes(plan, request, neck, slots, reading),
    ...sayRemarks(slots, reading.bars),
  ];
  return { song, neck, timeline, tempo, slots, request, route, score, notes, reading };
};

/** The walk with the band playing as it is told; the route and the banjo stay. */
export const withFeel = (walk: Walk, feel: Pick<Feel, "dynamics" | "walkUps" | "fills">): Walk => {
  const plan = { key: walk.song.key, feel, goesRound: walk.request.goesRound };
  return { ...walk, score: withBand(walk.score, walk.timeline, plan) };
};

/** The whole way as `banjoWalk` goes it, with the band in its usual feel. */
export const chartToScore = (...asked: Parameters<typeof banjoWalk>): Walk =>
  withFeel(banjoWalk(...asked), usualFeel);

/** The best routes for a walk that really differ, its own first, at most `count` of them. */
export const otherRoutes = (walk: Walk, count: number): readonly Route[] =>
  alternatives(walk.timeline, walk.neck, walk.request, count);

/** The same routes without an end set, one after the other as they are asked for. */
export const otherRoutesInTurn = (walk: Walk): Generator<Route, void, void> =>
  routesInTurn(walk.timeline, walk.neck, walk.request);

/** Why one placement of a walk's route is where it is; null where there is no route. */
export const whyHere = (walk: Walk, placement: number): Explanation | null =>
  walk.route && explain(walk.timeline, walk.neck, walk.request, walk.route, placement);
