import type { Song, Timeline } from "../chart/song.ts";
import type { Neck } from "../neck/neck.ts";
import { windowsOf } from "../route/change.ts";
import { legBetween } from "../route/planRoute.ts";
import type { PlanRequest } from "../route/problem.ts";
import type { Leg, Placement, Route } from "../route/route.ts";
import type { Slot } from "../route/slot.ts";
import { arrange } from "../score/arrange.ts";
import type { Score } from "../score/score.ts";
import { eighthNote } from "../score/tempo.ts";
import { type Bpm, millimetres } from "../units.ts";

/** As much of a song's walk as practising needs. `route.placements[i]` holds `slots[i]`. */
export type Planned = {
  readonly song: Song;
  readonly neck: Neck;
  readonly timeline: Timeline;
  /** In beats of the meter a minute: what the song is to be played at in the end. */
  readonly tempo: Bpm;
  readonly request: PlanRequest;
  readonly slots: readonly Slot[];
  /** null where there is none: then there is nothing to practise. */
  readonly route: Route | null;
  readonly score: Score;
};

/** How the hand gets through placements at the tempo of the request, and back where that goes round. */
const legsOf = (
  placements: readonly Placement[],
  slots: readonly Slot[],
  length: number,
  neck: Neck,
  request: PlanRequest,
): readonly Leg[] => {
  const [first] = placements;
  return placements.flatMap((from, index): readonly Leg[] => {
    const seam = index === placements.length - 1;
    const to = seam ? first : placements[index + 1];
    const [left, reached] = [slots[index], slots[to?.index ?? -1]];
    if (!to || !left || !reached || (seam && (!request.goesRound || index === 0))) return [];
    const windows = windowsOf(left, reached, seam ? length : null);
    return [legBetween(from, to, windows, seam, neck, request)];
  });
};

/** What has been decided already: when the hand holds what, and what the right hand plays on it. */
export type Excerpt = {
  readonly timeline: Timeline;
  readonly slots: readonly Slot[];
  readonly placements: readonly Placement[];
};

/**
 * The walk of what is held, at a tempo in beats of the meter a minute: the placements stay as they
 * are, and how each change is made, what is let go for it and where the hand slides is worked out for
 * that tempo. The score has the banjo alone.
 */
export const playedAt = <Walk extends Planned>(
  walk: Walk,
  { timeline, slots, placements }: Excerpt,
  tempo: Bpm,
  goesRound: boolean,
): Walk => {
  const eighth = eighthNote(timeline.meter, tempo);
  const request: PlanRequest = { ...walk.request, eighth, goesRound };
  const legs = legsOf(placements, slots, timeline.length, walk.neck, request);
  const route: Route = {
    aim: request.aim,
    placements,
    legs,
    travel: millimetres(legs.reduce((sum, { distance }) => sum + distance, 0)),
    costs: [],
  };
  const score = arrange(timeline, walk.neck, route, slots, eighth);
  return { ...walk, timeline, tempo, request, slots, route, score };
};

/** The whole song at another tempo, held as it is planned; the band plays what it played. */
export const atTempo = <Walk extends Planned>(walk: Walk, tempo: Bpm): Walk => {
  const { timeline, slots, route, score, request } = walk;
  if (!route || tempo === walk.tempo) return walk;
  const { placements } = route;
  const banjo = playedAt(walk, { timeline, slots, placements }, tempo, request.goesRound);
  return { ...banjo, score: { ...banjo.score, hits: score.hits } };
};
