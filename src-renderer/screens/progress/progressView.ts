import type { LogEntry, LoggedSong } from "../../../src-shared/practice/logLine.ts";
import { type Series, tempoSeries, whatMoved } from "../../../src-shared/practice/progress.ts";
import { sayLogged } from "../../../src-shared/wording/sayLogged.ts";
import { sayMark } from "../../../src-shared/wording/writeLogCsv.ts";
import { words } from "../../../src-shared/wordTable.ts";
import { beatNote, sayWhen } from "../../parts/facts.ts";
import { dayOf } from "../../state/localDay.ts";

const { progress } = words;

/** What moved is looked for in so many days. */
const FOUR_WEEKS = 28;

/** Songs of the log, each once by its newest title, the one practised last first. */
export const loggedSongs = (entries: readonly LogEntry[]): readonly LoggedSong[] => {
  const songs = new Map<string, LoggedSong>();
  for (const { song } of entries.toSorted((one, other) => other.round.atMs - one.round.atMs)) {
    if (song && !songs.has(song.id)) songs.set(song.id, song);
  }
  return [...songs.values()];
};

/** The rounds of one song; all where `songId` is null. */
export const roundsOf = (
  entries: readonly LogEntry[],
  songId: string | null,
): readonly LogEntry[] =>
  songId === null ? entries : entries.filter(({ song }) => song?.id === songId);

const sayThing = (song: LoggedSong | null, what: string, songId: string | null): string =>
  song && songId === null ? `${song.title}: ${what}` : what;

/** A series as it is called: with its song, unless only that song is shown. */
const saySeries = ({ song, item, bare }: Series, songId: string | null): string => {
  const what = sayLogged(item);
  return sayThing(song, bare ? progress.bare(what) : what, songId);
};

/** A picture of tempo over days, in words and numbers. */
export type SeriesFacts = {
  readonly key: string;
  readonly name: string;
  readonly beats: string;
  readonly days: Series["days"];
};

/** All that is drawn and said of tempos. */
export const tempoFacts = (
  entries: readonly LogEntry[],
  songId: string | null,
): { readonly series: readonly SeriesFacts[]; readonly moved: readonly MovedFacts[] } => {
  const series = tempoSeries(entries, dayOf);
  const moved = whatMoved(series, dayOf(Date.now()), FOUR_WEEKS);
  return {
    series: series.map((one) => ({
      key: one.key,
      name: saySeries(one, songId),
      beats: beatNote(one.unit),
      days: one.days,
    })),
    moved: moved.map(({ series: one, before, now }) => ({
      key: one.key,
      up: now > before,
      says: progress.movedBy(
        saySeries(one, songId),
        Math.round(before),
        Math.round(now),
        beatNote(one.unit),
      ),
    })),
  };
};

/** Something that moved, in words. */
export type MovedFacts = { readonly key: string; readonly up: boolean; readonly says: string };

/** A round of the list, in words. */
export type RoundFacts = {
  readonly id: string;
  readonly what: string;
  readonly detail: string;
  readonly clean: boolean | null;
  readonly mark: string;
  readonly when: string;
};

/** The rounds of a list in words, the newest first. */
export const roundFacts = (
  entries: readonly LogEntry[],
  songId: string | null,
  nowMs: number,
): readonly RoundFacts[] =>
  entries
    .toSorted((one, other) => other.round.atMs - one.round.atMs)
    .map(({ id, song, round }) => ({
      id,
      what: sayThing(song, sayLogged(round.item), songId),
      detail: [
        words.rehearsal.stages[round.stage],
        progress.aMinute(Math.round(round.tempo), beatNote(round.unit)),
      ].join(" · "),
      clean: round.mark === null ? null : round.mark === "clean",
      mark: sayMark(round.mark),
      when: sayWhen(round.atMs, nowMs),
    }));
