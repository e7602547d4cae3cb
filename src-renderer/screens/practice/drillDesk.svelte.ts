import type { Walk } from "../../../src-shared/chartToScore.ts";
import type { Ladder } from "../../../src-shared/practice/ladder.ts";
import type { Item, Mark, Round, Stage } from "../../../src-shared/practice/practice.ts";
import { stageOf } from "../../../src-shared/practice/stages.ts";
import { tick } from "../../../src-shared/units.ts";
import type { Player } from "../../state/player.svelte.ts";
import { exerciseToRehearse } from "./drillWalks.ts";
import { RoundKeeper } from "./roundKeeper.ts";

/** What is practised now, and how fast. */
export type Practised = {
  readonly item: Item;
  readonly stage: Stage;
  readonly ladder: Ladder;
};

/** Puts what is practised before the player: shown, heard round and round, its rounds told. */
export class DrillDesk {
  /** What is shown and heard; null while nothing is practised, or the song has not got it any more. */
  walk: Walk | null = $state.raw(null);
  readonly #song: () => Walk | null;
  readonly #player: Player;
  readonly #keeper: RoundKeeper;
  #exercise: { readonly name: string; readonly walk: Walk | null } | null = null;

  /** `song` is what changes and passages are taken from; null without one. */
  constructor(
    song: () => Walk | null,
    player: Player,
    settle: (round: Round) => void,
    nowMs: () => number,
  ) {
    this.#song = song;
    this.#player = player;
    this.#keeper = new RoundKeeper(settle, nowMs);
  }

  get sounds(): boolean {
    const { state } = this.#player;
    return state === "playing" || state === "countingIn";
  }

  /** What an item is cut from, at the tempo of its goal. */
  sourceOf(item: Item): Walk | null {
    if (item.kind !== "exercise") return this.#song();
    if (this.#exercise?.name !== item.name) {
      this.#exercise = { name: item.name, walk: exerciseToRehearse(item.name) };
    }
    return this.#exercise.walk;
  }

  /** Settles what was played, and rests. */
  clear(): void {
    this.#keeper.turnTo(null);
    this.#player.stop();
    this.walk = null;
  }

  /** From its first beat. */
  begin(now: Practised): void {
    this.#player.stop();
    this.#show(now);
    this.#keeper.turnTo(this.walk && { walk: this.walk, item: now.item, stage: now.stage });
    this.#player.seek(tick(0));
  }

  /** On from where it is, at the tempo that its ladder has come to. */
  change(now: Practised): void {
    if (now.ladder.tempo === this.walk?.tempo) return;
    this.#show(now);
    if (this.walk) this.#keeper.goOnWith({ walk: this.walk, item: now.item, stage: now.stage });
  }

  mark(mark: Mark): void {
    this.#keeper.mark(mark);
  }

  /** The music has come to a tick; says whether a round ended since the last. */
  follow(at: number): boolean {
    return this.#player.state === "playing" && this.walk !== null && this.#keeper.follow(at);
  }

  #show({ item, stage, ladder }: Practised): void {
    const source = this.sourceOf(item);
    const walk = source && stageOf(source, item, stage, ladder.tempo);
    this.walk = walk;
    if (!walk) return;
    this.#player.load(walk.score, walk.route?.placements ?? []);
    this.#player.setTempo(walk.tempo);
    this.#player.setLoop({ start: tick(0), end: walk.timeline.length });
    this.#player.setCountInEachRound(0);
    this.#player.setCountIn(1);
  }
}
