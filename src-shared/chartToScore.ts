import { inKey } from "./chart/inKey.ts";
import { type ChartReading, readChart } from "./chart/readChart.ts";
import type { Song, Timeline } from "./chart/song.ts";
import { unfold } from "./chart/unfold.ts";
import type { Diagnostic } from "./diagnostic.ts";
import { readKey } from "./harmony/readKey.ts";
import type { Neck } from "./neck/neck.ts";
import { neckFor } from "./neck/neckFor.ts";
import { tuningNamed, tunings } from "./neck/tuningTable.ts";
import { type Plan, type PlanRequest, planRoute } from "./route/planRoute.ts";
import type { Route } from "./route/route.ts";
import { arrange } from "./score/arrange.ts";
import type { Score } from "./score/score.ts";
import type { PlanSettings } from "./settings.ts";
import { fret } from "./units.ts";
import { sayNoVoicing } from "./wording/sayNoVoicing.ts";

/** Everything that a chart text and settings come to. */
export type Walk = {
  /** In the key it is played in. */
  readonly song: Song;
  readonly neck: Neck;
  readonly timeline: Timeline;
  /** null where no route exists within the settings; `notes` then says why. */
  readonly route: Route | null;
  readonly score: Score;
  /** What the chart's reader and the planner have to say. */
  readonly notes: readonly Diagnostic[];
  /** What was read, with the places of bars and chords in the text. */
  readonly reading: ChartReading;
};

const songToPlay = (written: Song, playKey: string | null): Song => {
  const asked = playKey === null ? null : readKey(playKey);
  return asked?.ok ? inKey(written, asked.key) : written;
};

const refusalsOf = (
  plan: Plan,
  request: PlanRequest,
  timeline: Timeline,
  reading: ChartReading,
): readonly Diagnostic[] =>
  plan.kind === "route"
    ? []
    : plan.stays.map((stay) => {
        const written = timeline.bars[stay.bar]?.written;
        return sayNoVoicing(
          stay,
          request,
          written === undefined ? undefined : reading.bars[written],
        );
      });

/**
 * The whole way: chart text -> song -> timeline -> route -> score. Any text and any settings give a
 * Walk; what is wrong with them stands in its notes. A play key that is no key is passed over.
 */
export const chartToScore = (text: string, settings: PlanSettings): Walk => {
  const reading = readChart(text);
  const song = songToPlay(reading.value, settings.playKey);
  const neck = neckFor(tuningNamed(song.tuning) ?? tunings[0], song.capo);
  const timeline = unfold(song);
  const { aim, shapes, goesRound } = settings;
  const range = { low: fret(settings.fretLow), high: fret(settings.fretHigh) };
  const request: PlanRequest = { aim, shapes, goesRound, range };
  const plan = planRoute(timeline.stays, neck, request);
  const route = plan.kind === "route" ? plan.route : null;
  const score = arrange(timeline, neck, route);
  const notes = [...reading.notes, ...refusalsOf(plan, request, timeline, reading)];
  return { song, neck, timeline, route, score, notes, reading };
};
