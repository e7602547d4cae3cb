import type { LaneLook } from "./laneLook.svelte.ts";

/** Moved less than this, in pixels, it was a tap. */
const LEAST_DRAG = 4;
/** Turned so far with Ctrl held, in pixels, a wheel zooms by one step. */
const ZOOM_TURN = 40;

/**
 * Lets the pointer drag a look along, a sideways wheel push it, and a wheel with Ctrl zoom.
 * `ticksOf` says how many ticks a number of pixels is.
 */
export const drags =
  (
    look: LaneLook,
    ticksOf: (px: number) => number,
    onZoom: (by: -1 | 1) => void,
  ): ((element: HTMLElement) => () => void) =>
  (element) => {
    let from: number | null = null;
    let turned = 0;
    const down = (event: PointerEvent): void => {
      const onControl = event.target instanceof Element && event.target.closest("button");
      if (event.button === 0 && !onControl) from = event.clientX;
    };
    const move = (event: PointerEvent): void => {
      if (from === null) return;
      if (!look.held) {
        if (Math.abs(event.clientX - from) < LEAST_DRAG) return;
        look.take();
        element.setPointerCapture(event.pointerId);
      }
      look.by(ticksOf(from - event.clientX));
      from = event.clientX;
    };
    const up = (): void => {
      from = null;
      if (look.held) look.letGo();
    };
    const wheel = (event: WheelEvent): void => {
      if (event.ctrlKey) {
        event.preventDefault();
        turned += event.deltaY;
        if (Math.abs(turned) < ZOOM_TURN) return;
        onZoom(turned > 0 ? -1 : 1);
        turned = 0;
      } else if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
        event.preventDefault();
        look.by(ticksOf(event.deltaX));
      }
    };
    const ending = new AbortController();
    const { signal } = ending;
    element.addEventListener("pointerdown", down, { signal });
    element.addEventListener("pointermove", move, { signal });
    element.addEventListener("pointerup", up, { signal });
    element.addEventListener("pointercancel", up, { signal });
    element.addEventListener("wheel", wheel, { signal, passive: false });
    return () => ending.abort();
  };
