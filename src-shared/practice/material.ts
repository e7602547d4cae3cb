import { tempoOfEighth } from "../score/tempo.ts";
import { type Bpm, bpm, milliseconds } from "../units.ts";
import { type Material, tempoOfStage, type Work } from "./compose.ts";
import { type Ladder, ladderOf, usualLadder } from "./ladder.ts";
import type { Planned } from "./planned.ts";
import type { Due, Item, Minutes, Round, Stage } from "./practice.ts";
import { stageOf } from "./stages.ts";
import { cleanTempo, nextStage } from "./standing.ts";
import type { Trouble } from "./troubleList.ts";

/** What the whole song is slowed down to at least, as a share of its tempo. A design choice. */
const SLOWEST = 0.5;
/** A little below what can just be done. A design choice. */
const EASIER = 0.9;

/**
 * A tempo at which the whole song works now, in whole beats of the meter a minute and never above its
 * own: the fastest it was played clean, else nine tenths of what its hardest change allows, but not
 * less than half its tempo.
 */
export const tempoThatWorks = (walk: Planned, rounds: readonly Round[]): Bpm => {
  const own = walk.tempo;
  const clean = cleanTempo(rounds, { kind: "song" }, "song");
  const shortest = Math.max(0, ...(walk.route?.legs ?? []).map((leg) => leg.shortestEighth ?? 0));
  const allowed =
    shortest === 0 ? own : EASIER * tempoOfEighth(walk.song.meter, milliseconds(shortest));
  const works = clean ?? Math.max(SLOWEST * own, allowed);
  return bpm(Math.min(own, Math.max(1, Math.round(works))));
};

/** What needs work, as a rehearsal takes it: where to begin with each change. */
export const workOf = (troubles: readonly Trouble[], rounds: readonly Round[]): readonly Work[] =>
  troubles.map(({ change: item }) => {
    const stage = nextStage(rounds, item);
    return { item, stage, tempo: cleanTempo(rounds, item, stage) };
  });

/**
 * What a guided rehearsal of a song is made of. Due items that the song, as it is planned now, has
 * not got any more are left out.
 */
export const materialOf = (
  walk: Planned,
  troubles: readonly Trouble[],
  rounds: readonly Round[],
  due: readonly Due[],
  minutes: Minutes,
  seed: number,
): Material => ({
  minutes,
  seed,
  goal: walk.tempo,
  songTempo: tempoThatWorks(walk, rounds),
  trouble: workOf(troubles, rounds),
  due: due.filter(
    ({ item, stage }) =>
      item.kind !== "song" && item.kind !== "exercise" && stageOf(walk, item, stage, walk.tempo),
  ),
});

/**
 * An item as it is taken up by itself, with the usual ladder: in the stage that is due for it by its
 * rounds, or in the one that is wanted. `walk` is what it is taken from, at the goal's tempo.
 */
export const takenUp = (
  walk: Planned,
  rounds: readonly Round[],
  item: Item,
  wanted: Stage | null,
): { readonly item: Item; readonly stage: Stage; readonly ladder: Ladder } => {
  const stage = wanted ?? nextStage(rounds, item);
  const { start, goal } = tempoOfStage(stage, walk.tempo, cleanTempo(rounds, item, stage));
  return { item, stage, ladder: ladderOf(usualLadder(start, goal)) };
};
