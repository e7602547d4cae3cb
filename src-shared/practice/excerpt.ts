import type { TimedBar, TimedStay, Timeline } from "../chart/song.ts";
import { inTurn } from "../roll/inTurn.ts";
import type { Pattern } from "../roll/pattern.ts";
import type { Played } from "../roll/played.ts";
import { exitsOf } from "../route/change.ts";
import type { Placement } from "../route/route.ts";
import type { Slot } from "../route/slot.ts";
import type { Span } from "../score/score.ts";
import { ticksPerBar } from "../score/tempo.ts";
import { TICKS_PER_EIGHTH, type Tick, tick } from "../units.ts";
import type { Excerpt, Planned } from "./planned.ts";

/** A placement and its slot, somewhere on the time line. */
export type Part = { readonly slot: Slot; readonly placement: Placement };

/** The patterns from one eighth (included) to another (not), counted from the first one's start. */
const piecesWithin = (pieces: readonly Pattern[], from: number, to: number): readonly Pattern[] => {
  let start = 0;
  return pieces.flatMap((piece) => {
    const { length } = piece.strokes;
    const [first, last] = [Math.max(0, from - start), Math.min(length, to - start)];
    start += length;
    if (first >= last) return [];
    return last - first === length
      ? [piece]
      : [{ ...piece, strokes: piece.strokes.slice(first, last) }];
  });
};

/** What is played of a slot from one eighth of it (included) to another (not). */
const playedWithin = (played: Played, from: number, to: number): Played => {
  const { cover } = played;
  return {
    ...played,
    pieces: piecesWithin(played.pieces, from, to),
    strokes: played.strokes.slice(from, to),
    cover: cover !== null && cover >= from && cover < to ? cover - from : null,
  };
};

/** What lies of a part within a span, moved so that the span's bars begin at 0; null for nothing. */
const within = ({ slot, placement }: Part, span: Span, origin: number): Part | null => {
  const start = Math.max(slot.start, span.start);
  const end = Math.min(slot.start + slot.length, span.end);
  if (start >= end) return null;
  const cut = [start, end].map((at) => Math.round((at - slot.start) / TICKS_PER_EIGHTH));
  const played = playedWithin(slot.played, cut[0] ?? 0, cut[1] ?? 0);
  const at = { start: tick(start - origin), length: tick(end - start) };
  return {
    slot: { ...slot, ...at, played, exits: exitsOf(played) },
    placement: { ...placement, ...at },
  };
};

/** The song as often as a span needs it, each time a song's length later than the time before. */
const unrolled = ({ slots, route, timeline }: Planned, span: Span): readonly Part[] => {
  const laps = [];
  const { length } = timeline;
  for (let lap = Math.floor(span.start / length); lap * length < span.end; lap += 1) laps.push(lap);
  return laps.flatMap((lap) =>
    slots.flatMap((slot, index): readonly Part[] => {
      const placement = route?.placements[index];
      const start = tick(slot.start + lap * length);
      return placement ? [{ slot: { ...slot, start }, placement: { ...placement, start } }] : [];
    }),
  );
};

/** Bars that hold a span, and where the first of them begins. */
const barsAround = (
  { bars, meter }: Timeline,
  span: Span,
): { readonly bars: readonly TimedBar[]; readonly origin: Tick } => {
  const measure = ticksPerBar(meter);
  const first = Math.floor(span.start / measure);
  const count = Math.ceil(span.end / measure) - first;
  const found = Array.from({ length: count }, (_, index) => {
    const bar = bars.at((((first + index) % bars.length) + bars.length) % bars.length);
    if (!bar) throw new Error(`no bar ${first + index} in a song of ${bars.length}`);
    return { ...bar, index, start: tick(index * measure) };
  });
  return { bars: found, origin: tick(first * measure) };
};

/** What is heard between two ticks: chords as they follow, silence where nothing is held. */
const staysOf = (parts: readonly Part[], bars: readonly TimedBar[]): readonly TimedStay[] => {
  const last = bars.at(-1);
  const end = last ? last.start + last.length : 0;
  const barAt = (at: number): number => bars.findLastIndex(({ start }) => start <= at);
  const stays: TimedStay[] = [];
  let at = 0;
  const add = (chord: TimedStay["chord"], start: number, stop: number): void => {
    const before = stays.at(-1);
    if (start >= stop) return;
    if (before && before.chord?.name === chord?.name) {
      stays[stays.length - 1] = { ...before, length: tick(stop - before.start) };
    } else {
      stays.push({ chord, start: tick(start), length: tick(stop - start), bar: barAt(start) });
    }
  };
  for (const { slot } of parts) {
    add(null, at, slot.start);
    at = slot.start + slot.length;
    add(slot.chord, slot.start, at);
  }
  add(null, at, end);
  return stays;
};

/** Parts in order, on bars of their own, numbered anew. */
export const heldOn = (
  parts: readonly Part[],
  bars: readonly TimedBar[],
  meter: Timeline["meter"],
): Excerpt => {
  const stays = staysOf(parts, bars);
  const stayAt = (at: number): number => stays.findLastIndex(({ start }) => start <= at);
  const barAt = (at: number): number => bars.findLastIndex(({ start }) => start <= at);
  const length = tick(bars.reduce((sum, bar) => sum + bar.length, 0));
  const numbers = (at: number): Pick<Slot, "stay" | "bar"> => ({
    stay: stayAt(at),
    bar: barAt(at),
  });
  const inChart = (at: number): Pick<Slot, "written" | "eighth"> => {
    const bar = bars[barAt(at)];
    if (!bar) throw new Error(`no bar holds tick ${at}`);
    return { written: bar.written, eighth: (at - bar.start) / TICKS_PER_EIGHTH };
  };
  return {
    timeline: { meter, bars, stays, length },
    slots: parts.map(({ slot }) => ({ ...slot, ...numbers(slot.start), ...inChart(slot.start) })),
    placements: parts.map(({ placement }, index) => ({
      ...placement,
      ...numbers(placement.start),
      index,
    })),
  };
};

/**
 * What is held in a song between two ticks, on whole bars; outside the span the hand rests. Where the
 * song goes round, a span may begin before 0 or end after the song: it goes on at the other end.
 */
export const excerptOf = (walk: Planned, span: Span): Excerpt => {
  const { bars, origin } = barsAround(walk.timeline, span);
  const parts = unrolled(walk, span).flatMap((part) => within(part, span, origin) ?? []);
  return heldOn(parts, bars, walk.timeline.meter);
};

/**
 * The same, to go round and round: where its end meets its start without a rest, a pinch makes way so
 * that no finger strikes twice running.
 */
export const goingRound = (held: Excerpt): Excerpt => {
  const { slots, timeline } = held;
  const [first, last] = [slots[0], slots.at(-1)];
  const joined = last && first?.start === 0 && last.start + last.length === timeline.length;
  if (!first || !joined || slots.length < 2) return held;
  const [ending = last.played, opening = first.played] = inTurn([last.played, first.played]);
  const turned = (slot: Slot, played: Played): Slot =>
    played === slot.played ? slot : { ...slot, played, exits: exitsOf(played) };
  return {
    ...held,
    slots: [turned(first, opening), ...slots.slice(1, -1), turned(last, ending)],
  };
};
