import type { Due, Round, RoundSink } from "../../src-shared/practice/practice.ts";

/** What the screen asks of the practice log. */
export interface PracticeHistory {
  /** The rounds of a song, or of the exercises (null), in order of time. */
  readonly roundsOf: (song: string | null) => readonly Round[];
  /** What of it is to be seen again, the most overdue first. */
  readonly dueOf: (song: string | null) => readonly Due[];
  readonly add: RoundSink;
}

/** The rounds since the start, and nothing of earlier days. */
export class RoundsSinceStart implements PracticeHistory {
  #rounds: readonly { readonly song: string | null; readonly round: Round }[] = $state.raw([]);

  readonly roundsOf = (song: string | null): readonly Round[] =>
    this.#rounds.flatMap((each) => (each.song === song ? [each.round] : []));

  readonly dueOf = (): readonly Due[] => [];

  readonly add: RoundSink = (song, round) => {
    this.#rounds = [...this.#rounds, { song, round }];
  };
}
