import { type BarRange, barRange } from "../geometry/barCells.ts";

/** Runs `work` once after `ms` milliseconds; the answer calls it off. */
type Wait = (work: () => void, ms: number) => () => void;

/** A finger that stays on a bar for so long, in milliseconds, takes it; until then it scrolls. */
export const HOLD_MS = 350;
/** Moved further than this, in pixels, the finger means to scroll. */
const LEAST_SCROLL = 8;

type Held = { readonly from: number; readonly to: number; readonly byTouch: boolean };
type Waiting = { readonly x: number; readonly y: number; readonly callOff: () => void };

const barUnder = (x: number, y: number): number | null => {
  const cell = document.elementFromPoint(x, y)?.closest("[data-bar]");
  return cell ? Number(cell.getAttribute("data-bar")) : null;
};

/**
 * A drag over the strip's bars: of a mouse or pen at once, of a finger once it was held still, for a
 * swipe scrolls the strip.
 */
export class StripDrag {
  #held = $state.raw<Held | null>(null);
  #waiting: Waiting | null = null;
  readonly #wait: Wait;
  readonly #onLoop: (loop: BarRange) => void;

  constructor(wait: Wait, onLoop: (loop: BarRange) => void) {
    this.#wait = wait;
    this.#onLoop = onLoop;
  }

  /** The bars dragged over so far; null where nothing would be looped. */
  get loop(): BarRange | null {
    const held = this.#held;
    return held && (held.byTouch || held.from !== held.to) ? barRange(held.from, held.to) : null;
  }

  /** Listens on the strip and, while a drag lasts, everywhere; the answer ends it. */
  readonly attach = (strip: HTMLElement): (() => void) => {
    const ending = new AbortController();
    const { signal } = ending;
    strip.addEventListener("pointerdown", (event) => this.#down(event), { signal });
    // Else the browser would take the held finger's movement for a swipe, and its rest for a menu.
    const keep = (event: Event): void => {
      if (this.#held?.byTouch) event.preventDefault();
    };
    strip.addEventListener("touchmove", keep, { signal, passive: false });
    strip.addEventListener("contextmenu", keep, { signal });
    window.addEventListener("pointermove", (event) => this.#move(event), { signal });
    window.addEventListener("pointerup", () => this.#up(), { signal });
    window.addEventListener("pointercancel", () => this.#end(), { signal });
    return () => {
      ending.abort();
      this.#end();
    };
  };

  #down({ clientX: x, clientY: y, pointerType, button, isPrimary }: PointerEvent): void {
    const bar = barUnder(x, y);
    if (bar === null || button !== 0 || !isPrimary) return;
    this.#end();
    if (pointerType !== "touch") {
      this.#held = { from: bar, to: bar, byTouch: false };
      return;
    }
    const callOff = this.#wait(() => {
      this.#waiting = null;
      this.#held = { from: bar, to: bar, byTouch: true };
    }, HOLD_MS);
    this.#waiting = { x, y, callOff };
  }

  #move({ clientX: x, clientY: y, isPrimary }: PointerEvent): void {
    const waiting = this.#waiting;
    if (!isPrimary) return;
    if (waiting && Math.hypot(x - waiting.x, y - waiting.y) > LEAST_SCROLL) this.#end();
    const to = this.#held ? barUnder(x, y) : null;
    if (this.#held && to !== null && to !== this.#held.to) this.#held = { ...this.#held, to };
  }

  #up(): void {
    const { loop } = this;
    this.#end();
    if (loop) this.#onLoop(loop);
  }

  #end(): void {
    this.#waiting?.callOff();
    this.#waiting = null;
    this.#held = null;
  }
}
