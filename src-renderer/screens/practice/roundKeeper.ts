import type { Walk } from "../../../src-shared/chartToScore.ts";
import type { Item, Mark, Round, Stage } from "../../../src-shared/practice/practice.ts";
import {
  type BookEntry,
  closeOf,
  emptyBook,
  endIn,
  markIn,
  middleOf,
  type RoundBook,
} from "../../../src-shared/practice/roundBook.ts";
import { shiftOf } from "../../../src-shared/practice/shiftOf.ts";
import { ticksToSeconds } from "../../../src-shared/score/tempo.ts";
import { milliseconds } from "../../../src-shared/units.ts";
import { middleOfDrill } from "./drillWalks.ts";

/** What is played round and round. */
export type Played = { readonly walk: Walk; readonly item: Item; readonly stage: Stage };

/** Follows what is played, and tells of each round once it is settled what was said of it. */
export class RoundKeeper {
  readonly #settle: (round: Round) => void;
  readonly #nowMs: () => number;
  #played: Played | null = null;
  #book: RoundBook = emptyBook;
  /** Where the music was last; null before it has sounded. */
  #at: number | null = null;

  constructor(settle: (round: Round) => void, nowMs: () => number) {
    this.#settle = settle;
    this.#nowMs = nowMs;
  }

  /** The player goes on to something else, or to nothing. */
  turnTo(played: Played | null): void {
    for (const round of closeOf(this.#book)) this.#settle(round);
    this.#book = emptyBook;
    this.#at = null;
    this.#played = played;
  }

  /** The same at another tempo, from the next round on. */
  goOnWith(played: Played): void {
    this.#played = played;
  }

  mark(mark: Mark): void {
    if (this.#played) this.#take(markIn(this.#book, mark, this.#isPastMiddle(this.#at ?? 0)));
  }

  /** The music has come to a tick; says whether a round ended since the last. */
  follow(at: number): boolean {
    const played = this.#played;
    const before = this.#at;
    this.#at = at;
    if (!played || before === null) return false;
    const ended = at < before - played.walk.timeline.length / 2;
    if (ended) this.#take(endIn(this.#book, this.#roundOf(played)));
    else if (!this.#isPastMiddle(before) && this.#isPastMiddle(at))
      this.#take(middleOf(this.#book));
    return ended;
  }

  #isPastMiddle(at: number): boolean {
    return this.#played !== null && at >= middleOfDrill(this.#played.walk, this.#played.item);
  }

  #take({ book, settled }: BookEntry): void {
    this.#book = book;
    for (const round of settled) this.#settle(round);
  }

  #roundOf({ walk, item, stage }: Played): Round {
    const { meter, length } = walk.timeline;
    const lasted = milliseconds(Math.round(1000 * ticksToSeconds(length, meter, walk.tempo)));
    const shift = shiftOf(walk, item, stage);
    const { tempo } = walk;
    return { item, stage, tempo, unit: meter.unit, mark: null, atMs: this.#nowMs(), lasted, shift };
  }
}
