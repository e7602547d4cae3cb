import type { Due, Round, RoundSink } from "../../src-shared/practice/practice.ts";
import { type Calendar, dueItems } from "../../src-shared/practice/spacing.ts";
import type { PracticeLog } from "./practiceLog.svelte.ts";

/** What a rehearsal asks of the practice log. */
export interface PracticeHistory {
  /** The rounds of a song, or of the exercises (null), in order of time. */
  readonly roundsOf: (song: string | null) => readonly Round[];
  /** What of it is to be seen again today, the most overdue first. */
  readonly dueOf: (song: string | null, nowMs: number) => readonly Due[];
  readonly add: RoundSink;
}

/** The practice log as a rehearsal sees it; rounds of songs go into it under the title they have now. */
export class LoggedHistory implements PracticeHistory {
  readonly #log: PracticeLog;
  readonly #titleOf: (song: string) => string;
  readonly #dayOf: Calendar;

  constructor(log: PracticeLog, titleOf: (song: string) => string, dayOf: Calendar) {
    this.#log = log;
    this.#titleOf = titleOf;
    this.#dayOf = dayOf;
  }

  readonly roundsOf = (song: string | null): readonly Round[] =>
    this.#log.entries.flatMap((entry) => ((entry.song?.id ?? null) === song ? [entry.round] : []));

  readonly dueOf = (song: string | null, nowMs: number): readonly Due[] =>
    dueItems(this.#log.entries, song, this.#dayOf(nowMs), this.#dayOf);

  readonly add: RoundSink = (song, round) =>
    this.#log.keep(song === null ? null : { id: song, title: this.#titleOf(song) }, round);
}
