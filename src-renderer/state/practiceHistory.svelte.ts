import type { Due, Round, RoundSink } from "../../src-shared/practice/practice.ts";
import { dueItems } from "../../src-shared/practice/spacing.ts";
import { dayOf } from "./localDay.ts";
import type { PracticeLog } from "./practiceLog.svelte.ts";

/** What the screen asks of the practice log. */
export interface PracticeHistory {
  /** The rounds of a song, or of the exercises (null), in order of time. */
  readonly roundsOf: (song: string | null) => readonly Round[];
  /** What of it is to be seen again, the most overdue first. */
  readonly dueOf: (song: string | null) => readonly Due[];
  readonly add: RoundSink;
}

/** The rounds of the log; each that is added goes to the disk, with the title its song has now. */
export class LoggedRounds implements PracticeHistory {
  readonly #log: PracticeLog;
  readonly #titleOf: (song: string) => string;
  readonly #nowMs: () => number;

  constructor(log: PracticeLog, titleOf: (song: string) => string, nowMs: () => number) {
    this.#log = log;
    this.#titleOf = titleOf;
    this.#nowMs = nowMs;
  }

  readonly roundsOf = (song: string | null): readonly Round[] =>
    this.#log.entries
      .filter((entry) => (entry.song?.id ?? null) === song)
      .map(({ round }) => round)
      .toSorted((one, other) => one.atMs - other.atMs);

  readonly dueOf = (song: string | null): readonly Due[] =>
    dueItems(this.#log.entries, song, dayOf(this.#nowMs()), dayOf);

  readonly add: RoundSink = (song, round) => {
    this.#log.keep(song === null ? null : { id: song, title: this.#titleOf(song) }, round);
  };
}
