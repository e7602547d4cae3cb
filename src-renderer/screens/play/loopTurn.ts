import type { Walk } from "../../../src-shared/chartToScore.ts";
import { exitsOf, type Windows, windowsOf } from "../../../src-shared/route/change.ts";
import { legBetween } from "../../../src-shared/route/planRoute.ts";
import type { Placement } from "../../../src-shared/route/route.ts";
import type { Slot } from "../../../src-shared/route/slot.ts";
import type { Span } from "../../../src-shared/score/score.ts";
import { TICKS_PER_EIGHTH, type Tick, tick } from "../../../src-shared/units.ts";
import type { Turn } from "../../geometry/handBlocks.ts";

/** What of a placement lies within a span. */
const within = (placement: Placement, { start, end }: Span): Placement => {
  const from = Math.max(placement.start, start);
  const to = Math.min(placement.start + placement.length, end);
  return { ...placement, start: tick(from), length: tick(to - from) };
};

/** How a slot can be left at the loop's end, by the strokes of it that are in the loop. */
const exitsAt = (slot: Slot, end: Tick): Windows => {
  const { strokes, cover } = slot.played;
  const heard = strokes.slice(0, Math.round((end - slot.start) / TICKS_PER_EIGHTH));
  return exitsOf({ strokes: heard, cover: cover !== null && cover < heard.length ? cover : null });
};

/**
 * How the hand gets from what is held last in a loop to what is held first, which may be the same;
 * null where nothing is held, or nothing loops.
 */
export const loopTurn = (walk: Walk, loop: Span | null): Turn | null => {
  const held = (walk.route?.placements ?? []).filter(
    ({ start, length }) => loop !== null && start < loop.end && start + length > loop.start,
  );
  const [first, last] = [held[0], held.at(-1)];
  if (!loop || !first || !last) return null;
  const slot = walk.slots[last.index];
  if (!slot) return null;
  const [from, to] = [within(last, loop), within(first, loop)];
  const windows = windowsOf({ ...from, exits: exitsAt(slot, loop.end) }, to, loop.end - loop.start);
  const leg = legBetween(from, to, windows, true, walk.neck, walk.request);
  return { at: loop.end, to: first, leg };
};
