import type { TimedBar } from "../chart/song.ts";
import { patternMeterOf } from "../roll/beats.ts";
import { type Played, playedOn } from "../roll/played.ts";
import { exitsOf } from "../route/change.ts";
import type { Slot } from "../route/slot.ts";
import { type Feel, usualFeel } from "../score/band.ts";
import { countIn } from "../score/countIn.ts";
import { withBand } from "../score/rhythm/rhythmSection.ts";
import type { Hit, Span } from "../score/score.ts";
import { ticksPerBar } from "../score/tempo.ts";
import { type Bpm, TICKS_PER_EIGHTH, type Tick, tick } from "../units.ts";
import { type ChangePlace, hardestPlace } from "./changePlaces.ts";
import { excerptOf, goingRound, heldOn } from "./excerpt.ts";
import { atTempo, type Excerpt, type Planned, playedAt } from "./planned.ts";
import type { Change, Item, Passage, Stage } from "./practice.ts";

/** Bars of the song before and after what is practised in it. A design choice. */
const LEAD_BARS = 1;

/** A band that keeps time and does nothing else. */
const plainFeel: Feel = { ...usualFeel, dynamics: false, walkUps: false, fills: false };

const withHits = <Walk extends Planned>(walk: Walk, hits: readonly Hit[]): Walk => ({
  ...walk,
  score: { ...walk.score, hits },
});

/** A click on every beat. */
const clicked = <Walk extends Planned>(walk: Walk): Walk => {
  const { meter, bars, length } = walk.timeline;
  const clicks = countIn(meter, bars.length).map((hit) => ({
    ...hit,
    tick: tick(hit.tick + length),
  }));
  return withHits(walk, clicks);
};

const banded = <Walk extends Planned>(walk: Walk, feel: Feel): Walk => ({
  ...walk,
  score: withBand(walk.score, walk.timeline, {
    key: walk.song.key,
    feel,
    goesRound: walk.request.goesRound,
  }),
});

/** One pinch at the start of a chord that lasts so many eighths from `offset` in its bar, then nothing. */
const pinched = (walk: Planned, offset: number, length: number): Pick<Slot, "played" | "exits"> => {
  const meter = patternMeterOf(walk.timeline.meter);
  const manner = { style: "forward", density: "once", soft: false } as const;
  const played = playedOn({ offset, length, meter }, manner, [], "never");
  return { played, exits: exitsOf(played) };
};

/** The same chords, each struck once. */
const bare = (walk: Planned, held: Excerpt): Excerpt => ({
  ...held,
  slots: held.slots.map((slot) => ({
    ...slot,
    ...pinched(walk, slot.eighth, slot.length / TICKS_PER_EIGHTH),
  })),
});

/** One chord for a bar, the other for a bar. */
const twoBars = (walk: Planned, { leg, from, to }: ChangePlace): Excerpt => {
  const { timeline, slots } = walk;
  const measure = ticksPerBar(timeline.meter);
  const parts = [from, to].map((placement, index) => {
    const slot = slots[placement.index];
    const bar = timeline.bars[placement.bar];
    if (!slot || !bar) throw new Error(`no slot for the change out of placement ${leg.from}`);
    const at = { start: tick(index * measure), length: measure };
    const playing = pinched(walk, 0, measure / TICKS_PER_EIGHTH);
    const timed: TimedBar = { ...bar, ...at, index };
    return {
      part: { slot: { ...slot, ...at, ...playing }, placement: { ...placement, ...at } },
      bar: timed,
    };
  });
  return heldOn(
    parts.map(({ part }) => part),
    parts.map(({ bar }) => bar),
    timeline.meter,
  );
};

/** Eighths of a row of patterns that are a measure at least, the fewest of them; all where they are less. */
const aMeasure = (pieces: Played["pieces"], measure: number): number => {
  let eighths = 0;
  for (const { strokes } of pieces) {
    if (eighths >= measure) break;
    eighths += strokes.length;
  }
  return eighths;
};

/**
 * A change with the patterns before and after it, a measure of each at least where the chords last as
 * long: a pattern starts and ends as a hand can join it to another.
 */
const around = ({ slots, timeline }: Planned, { from, to, due, leg }: ChangePlace): Span => {
  const [left, reached] = [slots[from.index], slots[to.index]];
  if (!left || !reached) throw new Error(`no slots for the leg from ${leg.from} to ${leg.to}`);
  const measure = ticksPerBar(timeline.meter) / TICKS_PER_EIGHTH;
  const before = aMeasure(left.played.pieces.toReversed(), measure) * TICKS_PER_EIGHTH;
  const after = aMeasure(reached.played.pieces, measure) * TICKS_PER_EIGHTH;
  const end = left.start + left.length;
  return { start: tick(end - before), end: tick(due + after) };
};

/** The span's bars, with bars of the song before and after; within the song where it does not go round. */
const ledInAndOut = ({ timeline, request }: Planned, span: Span): Span => {
  const measure = ticksPerBar(timeline.meter);
  const start = (Math.floor(span.start / measure) - LEAD_BARS) * measure;
  const end = (Math.ceil(span.end / measure) + LEAD_BARS) * measure;
  const whole = end - start >= timeline.length;
  if (whole) return { start: tick(0), end: timeline.length };
  return request.goesRound
    ? { start: tick(start), end: tick(end) }
    : { start: tick(Math.max(0, start)), end: tick(Math.min(timeline.length, end)) };
};

const excerptAt = <Walk extends Planned>(
  walk: Walk,
  span: Span,
  stage: Stage,
  tempo: Bpm,
): Walk => {
  const inSong = stage === "song";
  const held = goingRound(excerptOf(walk, inSong ? ledInAndOut(walk, span) : span));
  return stage === "slide"
    ? clicked(playedAt(walk, bare(walk, held), tempo, true))
    : banded(playedAt(walk, held, tempo, true), inSong ? usualFeel : plainFeel);
};

const changeAt = <Walk extends Planned>(
  walk: Walk,
  change: Change,
  stage: Stage,
  tempo: Bpm,
): Walk | null => {
  const place = hardestPlace(walk, change);
  if (!place) return null;
  return stage === "slide"
    ? clicked(playedAt(walk, twoBars(walk, place), tempo, true))
    : excerptAt(walk, around(walk, place), stage, tempo);
};

const passageAt = <Walk extends Planned>(
  walk: Walk,
  { firstBar, lastBar }: Passage,
  stage: Stage,
  tempo: Bpm,
): Walk | null => {
  const { bars } = walk.timeline;
  const [first, last] = [bars[firstBar], bars[lastBar]];
  if (!first || !last || lastBar < firstBar) return null;
  const end: Tick = tick(last.start + last.length);
  return excerptAt(walk, { start: first.start, end }, stage, tempo);
};

const songAt = <Walk extends Planned>(walk: Walk, stage: Stage, tempo: Bpm): Walk => {
  const { request, timeline } = walk;
  if (stage !== "slide") return atTempo(walk, tempo);
  const held = bare(walk, excerptOf(walk, { start: tick(0), end: timeline.length }));
  return clicked(playedAt(walk, held, tempo, request.goesRound));
};

/**
 * What is played and shown when an item is practised in a stage, at a tempo in beats of the meter a
 * minute (above 0): a walk of its own, held as the song is planned, that goes round and round; a whole
 * song does as it is set. For an exercise `walk` is the exercise's own. null where the song, as it is
 * planned now, has not got the item, or has no route.
 */
export const stageOf = <Walk extends Planned>(
  walk: Walk,
  item: Item,
  stage: Stage,
  tempo: Bpm,
): Walk | null => {
  if (!walk.route || walk.route.placements.length === 0) return null;
  switch (item.kind) {
    case "change":
      return changeAt(walk, item, stage, tempo);
    case "passage":
      return passageAt(walk, item, stage, tempo);
    case "song":
    case "exercise":
      return songAt(walk, stage, tempo);
  }
};
