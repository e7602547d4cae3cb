import { compose } from "../../../src-shared/practice/compose.ts";
import { climb, type LadderPlan, ladderOf } from "../../../src-shared/practice/ladder.ts";
import { materialOf, takenUp } from "../../../src-shared/practice/material.ts";
import type { Item, Mark, Minutes, Round, Stage } from "../../../src-shared/practice/practice.ts";
import {
  advance,
  type Session,
  type SessionEvent,
  sessionOf,
  stepNow,
} from "../../../src-shared/practice/session.ts";
import { type Trouble, troubleList } from "../../../src-shared/practice/troubleList.ts";
import type { SongClock } from "../../state/openSong.svelte.ts";
import type { Player } from "../../state/player.svelte.ts";
import type { PracticeHistory } from "../../state/practiceHistory.ts";
import { DrillDesk, type Practised } from "./drillDesk.svelte.ts";
import type { RehearsedSong } from "./drillWalks.ts";

/** Between two looks at the clock, in ms. */
const LOOK_MS = 200;

/** What the player practises, by choice or led, and what of it goes to the log. */
export class Rehearsal {
  session: Session | null = $state.raw(null);
  /** The last mark that was given, a new value each time; null before any. */
  said: { readonly mark: Mark } | null = $state.raw(null);
  /** How many rounds were played since it was begun, and how many were clean. */
  counts: { readonly rounds: number; readonly clean: number } = $state.raw({ rounds: 0, clean: 0 });
  #own: Practised | null = $state.raw(null);
  readonly desk: DrillDesk;
  readonly trouble: readonly Trouble[];
  readonly rounds: readonly Round[];
  readonly #song: () => RehearsedSong | null;
  readonly #player: Player;
  readonly #history: PracticeHistory;
  readonly #clock: SongClock;
  #lookedAt = 0;
  #callOff: (() => void) | null = null;

  /** `song` is asked again whenever it changes; null where none is open. */
  constructor(
    song: () => RehearsedSong | null,
    player: Player,
    history: PracticeHistory,
    clock: SongClock,
  ) {
    this.#song = song;
    this.#player = player;
    this.#history = history;
    this.#clock = clock;
    const walk = $derived(song()?.walk ?? null);
    this.desk = new DrillDesk(
      () => walk,
      player,
      (round) => this.#settle(round),
      clock.nowMs,
    );
    this.rounds = $derived(history.roundsOf(song()?.id ?? null));
    this.trouble = $derived(walk ? troubleList(walk, this.rounds) : []);
  }

  /** What is practised now; null in a rest, at the end, and before anything is chosen. */
  get now(): Practised | null {
    if (!this.session) return this.#own;
    const step = stepNow(this.session);
    const { ladder } = this.session;
    return step?.kind === "play" && ladder ? { ...step, ladder } : null;
  }

  /** The player is led, or has chosen something. */
  get busy(): boolean {
    return this.session !== null || this.#own !== null;
  }

  /** Takes up an item, in the stage that is due for it unless one is given. */
  practise(item: Item, wanted: Stage | null = null): void {
    this.leave();
    const source = this.desk.sourceOf(item);
    if (!source) return;
    const rounds = this.#history.roundsOf(this.#songOf(item));
    this.#own = takenUp(source, rounds, item, wanted);
    this.desk.begin(this.#own);
  }

  /** Begins a guided rehearsal of the song; does nothing without one. */
  async lead(minutes: Minutes): Promise<void> {
    this.leave();
    const song = this.#song();
    if (!song?.walk) return;
    const { trouble, rounds } = this;
    const nowMs = this.#clock.nowMs();
    const seed = Math.floor(nowMs / 1000) % 1_000_000;
    const due = this.#history.dueOf(song.id, nowMs);
    this.counts = { rounds: 0, clean: 0 };
    this.session = sessionOf(compose(materialOf(song.walk, trouble, rounds, due, minutes, seed)));
    this.#look();
    await this.#enter();
  }

  /** Another stage of the same; what sounded sounds on. */
  async setStage(stage: Stage): Promise<void> {
    const { sounds } = this.desk;
    if (!this.#own) return;
    this.practise(this.#own.item, stage);
    if (sounds) await this.playPause();
  }

  /** Another ladder for what the player has chosen; it begins at its start. */
  setLadder(plan: LadderPlan): void {
    if (!this.#own) return;
    this.#own = { ...this.#own, ladder: ladderOf(plan) };
    this.desk.change(this.#own);
  }

  mark(mark: Mark): void {
    if (!this.desk.sounds || !this.now) return;
    this.said = { mark };
    this.desk.mark(mark);
  }

  /** Plays or pauses; a rest is only held up. */
  async playPause(): Promise<void> {
    const { session } = this;
    if (session && stepNow(session)?.kind === "rest") {
      this.session = advance(session, { kind: session.paused ? "resume" : "pause" });
    } else if (this.desk.walk) {
      await this.#player.playPause();
    }
  }

  /** To the next part of a guided rehearsal. */
  async nextPart(): Promise<void> {
    await this.#happen({ kind: "skip" });
  }

  /** Back to the list; what was played is settled. */
  leave(): void {
    this.#callOff?.();
    this.#callOff = null;
    this.desk.clear();
    this.session = null;
    this.#own = null;
    this.said = null;
  }

  /** The music has come to a tick: a step of the ladder is taken where a round begins. */
  follow(at: number): void {
    if (this.desk.follow(at) && this.now) this.desk.change(this.now);
  }

  #songOf(item: Item): string | null {
    return item.kind === "exercise" ? null : (this.#song()?.id ?? null);
  }

  #settle(round: Round): void {
    const { mark } = round;
    this.#history.add(this.#songOf(round.item), round);
    const clean = this.counts.clean + (mark === "clean" ? 1 : 0);
    this.counts = { rounds: this.counts.rounds + 1, clean };
    if (this.session) {
      this.session = advance(this.session, { kind: "round", mark });
    } else if (this.#own) {
      this.#own = { ...this.#own, ladder: climb(this.#own.ladder, { kind: "round", mark }) };
    }
  }

  async #happen(event: SessionEvent): Promise<void> {
    const before = this.session;
    if (!before) return;
    const after = advance(before, event);
    const goesOn = after.at !== before.at;
    // What was played in the part that ends is settled while that part is still the present one.
    if (goesOn) this.desk.clear();
    this.session = after;
    if (goesOn) await this.#enter();
  }

  /** A part begins: the sound comes with what is played, and is gone in a rest. */
  async #enter(): Promise<void> {
    this.said = null;
    if (!this.now) return;
    this.desk.begin(this.now);
    await this.#player.playPause();
  }

  /** Time counts while something sounds, or in a rest that is not held up. */
  #look(): void {
    const before = this.#callOff === null ? null : this.#lookedAt;
    this.#lookedAt = this.#clock.nowMs();
    const step = this.session && stepNow(this.session);
    this.#callOff = step ? this.#clock.later(() => this.#look(), LOOK_MS) : null;
    const counts = before !== null && (step?.kind === "rest" || this.desk.sounds);
    if (counts) void this.#happen({ kind: "time", seconds: (this.#lookedAt - before) / 1000 });
  }
}
