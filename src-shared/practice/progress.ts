import { quartersPerMinute } from "../score/tempo.ts";
import { type Bpm, bpm } from "../units.ts";
import { grouped } from "./grouped.ts";
import { itemId } from "./itemId.ts";
import type { LogEntry, LoggedSong } from "./logLine.ts";
import type { Item, Round } from "./practice.ts";
import type { Calendar } from "./spacing.ts";

/** One day of something that was practised. */
export type DayOfTempo = {
  readonly day: number;
  /** The fastest clean round of the day; null where none was clean. */
  readonly clean: Bpm | null;
  /** The fastest round of the day, clean or not. */
  readonly tried: Bpm;
};

/** How the tempo of one thing went from day to day. */
export type Series = {
  readonly key: string;
  /** null for an exercise. */
  readonly song: LoggedSong | null;
  readonly item: Item;
  /** The slide alone, without a roll: its tempos say something else. */
  readonly bare: boolean;
  /** What the tempos count, as in the newest round. */
  readonly unit: Round["unit"];
  /** In order, each day once; at least one. */
  readonly days: readonly DayOfTempo[];
};

/** What a beat is worth in each unit: a half note, a quarter, a dotted quarter. */
const meterOf = (unit: Round["unit"]) => ({ beats: unit === 8 ? 6 : unit, unit }) as const;

/** A tempo as it reads when another note value is counted. */
const tempoIn = (unit: Round["unit"], { tempo, unit: counted }: Round): Bpm =>
  unit === counted
    ? tempo
    : bpm(quartersPerMinute(meterOf(counted), tempo) / quartersPerMinute(meterOf(unit), bpm(1)));

const fastest = (rounds: readonly Round[], unit: Round["unit"]): Bpm =>
  bpm(Math.max(...rounds.map((round) => tempoIn(unit, round))));

const seriesOf = (key: string, entries: readonly LogEntry[], dayOf: Calendar): Series | null => {
  const last = entries.at(-1);
  if (last === undefined) {
    return null;
  }
  const { item, unit, stage } = last.round;
  const byDay = grouped(
    entries.map(({ round }) => round),
    ({ atMs }) => dayOf(atMs),
  );
  const days = [...byDay].map(([day, rounds]): DayOfTempo => {
    const clean = rounds.filter(({ mark }) => mark === "clean");
    return {
      day,
      clean: clean.length > 0 ? fastest(clean, unit) : null,
      tried: fastest(rounds, unit),
    };
  });
  return { key, song: last.song, item, bare: stage === "slide", unit, days };
};

/** Tempo over days for each thing that was practised, the one practised last first. */
export const tempoSeries = (log: readonly LogEntry[], dayOf: Calendar): readonly Series[] => {
  const inOrder = log.toSorted((one, other) => one.round.atMs - other.round.atMs);
  const byThing = grouped(inOrder, ({ song, round }) =>
    [song?.id ?? "", itemId(round.item), round.stage === "slide" ? "slide" : ""].join("\n"),
  );
  return [...byThing]
    .toSorted(([, one], [, other]) => lastPlayed(other) - lastPlayed(one))
    .flatMap(([key, entries]) => seriesOf(key, entries, dayOf) ?? []);
};

const lastPlayed = (entries: readonly LogEntry[]): number => entries.at(-1)?.round.atMs ?? 0;

/** A week and how long was played in it. */
export type Week = {
  /** The day it begins with, as the calendar counts. */
  readonly from: number;
  readonly minutes: number;
};

const DAYS_IN_WEEK = 7;

/**
 * Minutes played in each of the last `count` weeks, the newest last, weeks without any included.
 * `weekday` is how many days of this week lie before today: 0 where today begins one.
 */
export const minutesByWeek = (
  log: readonly LogEntry[],
  dayOf: Calendar,
  today: number,
  weekday: number,
  count: number,
): readonly Week[] => {
  const thisWeek = today - weekday;
  const lasted = new Map<number, number>();
  for (const { round } of log) {
    const from =
      thisWeek + DAYS_IN_WEEK * Math.floor((dayOf(round.atMs) - thisWeek) / DAYS_IN_WEEK);
    lasted.set(from, (lasted.get(from) ?? 0) + round.lasted);
  }
  return Array.from({ length: count }, (_, index) => {
    const from = thisWeek - DAYS_IN_WEEK * (count - 1 - index);
    return { from, minutes: (lasted.get(from) ?? 0) / 60_000 };
  });
};

/** How far something has come: its fastest clean tempo on the first and on the last clean day. */
export type Moved = { readonly series: Series; readonly before: Bpm; readonly now: Bpm };

/**
 * What moved within the last `days` days: whatever was clean on at least two of them at another tempo
 * on the last than on the first; the greatest gain by share first.
 */
export const whatMoved = (
  series: readonly Series[],
  today: number,
  days: number,
): readonly Moved[] =>
  series
    .flatMap((one): readonly Moved[] => {
      const clean = one.days.flatMap(({ day, clean }) =>
        clean !== null && day > today - days ? [clean] : [],
      );
      const [before] = clean;
      const now = clean.at(-1);
      return before !== undefined && now !== undefined && before !== now
        ? [{ series: one, before, now }]
        : [];
    })
    .toSorted((one, other) => other.now / other.before - one.now / one.before);
