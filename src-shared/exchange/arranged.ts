import type { Song, Timeline } from "../chart/song.ts";
import type { Neck } from "../neck/neck.ts";
import type { Route } from "../route/route.ts";
import type { Score } from "../score/score.ts";
import type { Bpm } from "../units.ts";

/** What goes out into files: a song as it is played, with every note. A walk is one. */
export type Arranged = {
  /** In the key it is played in. */
  readonly song: Song;
  readonly neck: Neck;
  readonly timeline: Timeline;
  /** What it is played at, in beats of the meter a minute. */
  readonly tempo: Bpm;
  /** null where no route was found; the banjo is then silent. */
  readonly route: Route | null;
  readonly score: Score;
};
