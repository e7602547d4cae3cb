import type { ExerciseShape } from "../../../src-shared/practice/exercises.ts";
import type { Minutes } from "../../../src-shared/practice/practice.ts";

/** What there is to choose from. */
export type PracticeList = "changes" | "exercises";

/** What the player has chosen on the list, kept while something is practised. */
export class PracticeChoice {
  list: PracticeList = $state("changes");
  minutes: Minutes = $state(10);
  /** Tonic of the exercises' key. */
  tonic: string = $state("G");
  shape: ExerciseShape = $state("F");
  /** The next set of random calls. */
  seed: number = $state(1);

  constructor(hasSong: boolean) {
    this.list = hasSong ? "changes" : "exercises";
  }
}
