import type { Walk } from "../../../src-shared/chartToScore.ts";
import type { Span } from "../../../src-shared/score/score.ts";
import { beatsPerBar, ticksPerBeat } from "../../../src-shared/score/tempo.ts";
import type { Voicing } from "../../../src-shared/voicing/voicing.ts";
import { words } from "../../../src-shared/wordTable.ts";
import type { ComingChange } from "../../geometry/comingChange.ts";
import { type ChangeWords, changeAt, changeWords, type Pips, pipsTo } from "./changeWords.ts";

/** Where the player is, as the player's state says it. */
export type WhereNow = {
  readonly state: "stopped" | "countingIn" | "playing" | "paused";
  readonly bar: number;
  readonly beat: number;
  readonly placement: number;
};

/** All that one glance wants to know. */
export type StandNow = {
  /** Of the beat that is played, within the placement that is held. */
  readonly tick: number;
  /** Index of the placement held; -1 is none. */
  readonly placement: number;
  readonly counting: boolean;
  readonly change: ComingChange;
  readonly words: ChangeWords;
  readonly beats: Pips;
  /** The shape that comes; null where the hand stays. */
  readonly coming: Voicing | null;
};

/**
 * What is held, what comes, how far and how long. `round` starts over at its end; `backToBar` is the
 * 0-based first bar of the loop.
 */
export const standNow = (
  walk: Walk,
  now: WhereNow,
  round: Span | null,
  backToBar: number,
): StandNow => {
  const { timeline } = walk;
  const held = walk.route?.placements[now.placement] ?? null;
  const placement = held?.index ?? -1;
  const counting = now.state === "countingIn";
  const beat = counting ? 0 : now.beat * ticksPerBeat(timeline.meter);
  const at = (timeline.bars[now.bar]?.start ?? 0) + beat;
  const tick = held ? Math.min(held.start + held.length - 1, Math.max(held.start, at)) : at;
  const change = changeAt(walk, { tick, placement, loop: round, length: timeline.length });
  const countIn: Pips = {
    total: beatsPerBar(timeline.meter),
    filled: now.beat + 1,
    label: words.play.countInBeat(now.beat + 1),
  };
  return {
    tick,
    placement,
    counting,
    change,
    words: changeWords(walk, change, tick, backToBar),
    beats: counting ? countIn : pipsTo(walk, change, tick),
    coming: change.leg?.kind === "hold" ? null : (change.next?.voicing ?? null),
  };
};

/** Every chord that may stand on the screen, so that their places can be kept. */
export const namesIn = (walk: Walk): readonly string[] => [
  ...new Set(walk.timeline.stays.map((stay) => stay.chord?.name ?? "N.C.")),
];
