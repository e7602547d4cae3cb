import type { Span } from "../../src-shared/score/score.ts";
import { laneShift, laneX, steppedTick } from "../geometry/laneGeometry.ts";
import { lookLimits } from "../geometry/lookLimits.ts";
import { chunkAt } from "../geometry/visible.ts";
import type { LaneLook } from "./laneLook.svelte.ts";

/** What a frame of the lanes needs to know. Pixels and ticks. */
export type LaneFrame = {
  readonly width: number;
  readonly perQuarter: number;
  readonly chunkTicks: number;
  /** The lanes go on by so many ticks at a time where motion is unwanted; null is evenly. */
  readonly steps: number | null;
  /** What starts over at its end; null without. */
  readonly round: Span | null;
  /** Tick at which the song ends. */
  readonly length: number;
  /** Pushed along as the music goes on, and as the player looks ahead. */
  readonly scroller: HTMLElement | undefined;
  readonly mover: HTMLElement | undefined;
};

/** What has to be drawn: a chunk of time, and the song after its loop where now is past that. */
export type Drawn = { readonly chunk: number; readonly past: boolean };

/** Moves the lanes, by transform alone; a frame is no time to ask what has changed. */
export class LanePlacer {
  #frame: LaneFrame | null = null;
  #tick = 0;
  #movedBy: number | null = null;
  #drawn: Drawn = { chunk: 0, past: false };
  readonly #look: LaneLook;
  readonly #draw: (drawn: Drawn) => void;

  constructor(look: LaneLook, draw: (drawn: Drawn) => void) {
    this.#look = look;
    this.#draw = draw;
  }

  /** Takes what has changed, and places all anew. */
  take(frame: LaneFrame): void {
    this.#frame = frame;
    this.#movedBy = null;
    this.place(this.#tick);
  }

  again(): void {
    this.place(this.#tick);
  }

  place(tick: number): void {
    this.#tick = tick;
    if (!this.#frame) return;
    const { width, perQuarter, chunkTicks, steps, scroller, mover } = this.#frame;
    const ahead = this.#look.ahead === 0 ? 0 : this.within(this.#look.ahead);
    if (scroller) {
      const shownTick = steps === null ? tick : steppedTick(tick, steps);
      scroller.style.transform = `translate3d(${laneShift(shownTick, perQuarter, width)}px, 0, 0)`;
    }
    if (mover && ahead !== this.#movedBy) {
      this.#movedBy = ahead;
      mover.style.transform = `translate3d(${-laneX(ahead, perQuarter)}px, 0, 0)`;
    }
    const chunk = chunkAt(tick + ahead, chunkTicks);
    const past = this.#turns() === null && this.#frame.round !== null;
    if (chunk === this.#drawn.chunk && past === this.#drawn.past) return;
    this.#drawn = { chunk, past };
    this.#draw(this.#drawn);
  }

  /** The nearest ticks from now that can be looked at. */
  within(ahead: number): number {
    const { low, high } = lookLimits(this.#tick, this.#frame?.length ?? 0, this.#turns());
    return Math.min(high, Math.max(low, ahead));
  }

  /** The loop that now is before the end of. */
  #turns(): Span | null {
    const round = this.#frame?.round ?? null;
    return round && this.#tick < round.end ? round : null;
  }
}
