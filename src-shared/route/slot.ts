import type { Meter, TimedBar, TimedStay, Timeline } from "../chart/song.ts";
import type { Chord } from "../harmony/chord.ts";
import type { Neck } from "../neck/neck.ts";
import { patternMeterOf } from "../roll/beats.ts";
import { fifthBelongs } from "../roll/fifthBelongs.ts";
import type { FitManner } from "../roll/fitRolls.ts";
import { inTurn } from "../roll/inTurn.ts";
import { mannerAt, type Spot } from "../roll/mannerAt.ts";
import type { Pattern } from "../roll/pattern.ts";
import type { Picking } from "../roll/picking.ts";
import { type Played, playedOn } from "../roll/played.ts";
import type { StayShape } from "../roll/segments.ts";
import { TICKS_PER_EIGHTH, type Tick, tick } from "../units.ts";
import { exitsOf, type Windows } from "./change.ts";

/** A stretch of the song that takes one voicing: a stay, or one of two parts of it. */
export type Slot = {
  /** 0-based among the stays as played. */
  readonly stay: number;
  /** 0-based bar in which it starts. */
  readonly bar: number;
  readonly start: Tick;
  readonly length: Tick;
  readonly chord: Chord;
  /** 0-based written bar in which it starts, and where in it, in eighth notes. */
  readonly written: number;
  readonly eighth: number;
  /** Which time that bar is played, from 0. */
  readonly time: number;
  /** What the right hand plays on it, and how it can be left. */
  readonly played: Played;
  readonly exits: Windows;
};

/** What the slots of a song depend on. */
export type SlotRequest = {
  readonly perChord: 1 | 2;
  readonly picking: Picking;
  /** The player's own patterns. */
  readonly patterns: readonly Pattern[];
};

/** The name of a slot's place in the chart: the same whenever its bar is played. */
export const placeOf = ({ written, eighth, chord }: Slot): string =>
  `${written} ${eighth} ${chord.name}`;

/** The bar line inside a stay that is nearest to its middle, the later of two; null if none is. */
const middleBarLine = (stay: TimedStay, bars: readonly TimedBar[]): TimedBar | null => {
  const middle = stay.start + stay.length / 2;
  let best: TimedBar | null = null;
  for (let index = stay.bar + 1; index < bars.length; index += 1) {
    const bar = bars[index];
    if (!bar || bar.start >= stay.start + stay.length) {
      break;
    }
    if (best === null || Math.abs(bar.start - middle) <= Math.abs(best.start - middle)) {
      best = bar;
    }
  }
  return best;
};

/** For each bar as played, which time its written bar is played, from 0. */
const timesOf = (bars: readonly TimedBar[]): readonly number[] => {
  const played = new Map<number, number>();
  return bars.map(({ written }) => {
    const time = played.get(written) ?? 0;
    played.set(written, time + 1);
    return time;
  });
};

type Playing = Pick<Slot, "played" | "exits">;

/** Works out what is played once for all chords that lie alike in their bars. */
const playingOf = (
  meter: Meter,
  neck: Neck,
  { picking, patterns }: SlotRequest,
): ((chord: Chord, stay: Omit<StayShape, "meter">, manner: FitManner) => Playing) => {
  const known = new Map<string, Playing>();
  const belongs = new Map<string, boolean>();
  return (chord, stay, manner) => {
    const fits = belongs.get(chord.name) ?? fifthBelongs(chord, neck);
    belongs.set(chord.name, fits);
    const fifth = fits ? picking.fifth : "never";
    const kind = `${stay.offset} ${stay.length} ${fifth} ${manner.density} ${manner.soft} ${manner.style}`;
    const found = known.get(kind);
    if (found) {
      return found;
    }
    const shape = { ...stay, meter: patternMeterOf(meter) };
    const played = playedOn(shape, manner, patterns, fifth);
    const playing = { played, exits: exitsOf(played) };
    known.set(kind, playing);
    return playing;
  };
};

/** What is played where one chord follows straight on another: each run without a rest by itself. */
const joined = (slots: readonly Slot[]): readonly Slot[] => {
  const runs: Slot[][] = [];
  for (const slot of slots) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run && before && before.start + before.length === slot.start) {
      run.push(slot);
    } else {
      runs.push([slot]);
    }
  }
  return runs.flatMap((run) => {
    const playing = inTurn(run.map(({ played }) => played));
    return run.map((slot, index) => {
      const played = playing[index] ?? slot.played;
      return played === slot.played ? slot : { ...slot, played, exits: exitsOf(played) };
    });
  });
};

/**
 * The stretches that take a voicing each, in order, and what the right hand plays on them; N.C. has
 * none. With two to a chord, a stay of two whole measures or more is parted at the bar line nearest
 * to its middle, where one roll ends and another starts.
 */
export const slotsOf = (
  timeline: Pick<Timeline, "stays" | "bars" | "meter">,
  neck: Neck,
  request: SlotRequest,
): readonly Slot[] => {
  const { picking, perChord } = request;
  const times = timesOf(timeline.bars);
  const playing = playingOf(timeline.meter, neck, request);
  const spotAt = (chord: Chord, barIndex: number, start: number): Spot => {
    const bar = timeline.bars[barIndex];
    if (!bar) {
      throw new Error(`${chord.name} starts in bar ${barIndex} of ${timeline.bars.length}`);
    }
    return {
      written: bar.written,
      eighth: (start - bar.start) / TICKS_PER_EIGHTH,
      time: times[barIndex] ?? 0,
      chord: chord.name,
      section: bar.section,
    };
  };
  const slots = timeline.stays.flatMap((stay, index): readonly Slot[] => {
    const { chord, bar, start, length } = stay;
    if (chord === null) {
      return [];
    }
    const first = spotAt(chord, bar, start);
    const slotAt = (at: Spot, barIndex: number, from: number, lasts: number): Slot => ({
      stay: index,
      chord,
      bar: barIndex,
      start: tick(from),
      length: tick(lasts),
      written: at.written,
      eighth: at.eighth,
      time: at.time,
      ...playing(
        chord,
        { offset: at.eighth, length: lasts / TICKS_PER_EIGHTH },
        mannerAt(picking, at, first),
      ),
    });
    const measure = timeline.bars[bar]?.length ?? length;
    const cut = perChord === 2 && length >= 2 * measure ? middleBarLine(stay, timeline.bars) : null;
    if (cut === null) {
      return [slotAt(first, bar, start, length)];
    }
    const before = cut.start - start;
    return [
      slotAt(first, bar, start, before),
      slotAt(spotAt(chord, cut.index, cut.start), cut.index, cut.start, length - before),
    ];
  });
  return joined(slots);
};
