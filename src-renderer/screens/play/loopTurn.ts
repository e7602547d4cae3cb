import type { Walk } from "../../../src-shared/chartToScore.ts";
import { legBetween } from "../../../src-shared/route/planRoute.ts";
import type { Placement } from "../../../src-shared/route/route.ts";
import type { Span } from "../../../src-shared/score/score.ts";
import { tick } from "../../../src-shared/units.ts";
import type { Turn } from "../../geometry/handBlocks.ts";

/** What of a placement lies within a span. */
const within = (placement: Placement, { start, end }: Span): Placement => {
  const from = Math.max(placement.start, start);
  const to = Math.min(placement.start + placement.length, end);
  return { ...placement, start: tick(from), length: tick(to - from) };
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
  const leg = legBetween(
    within(last, loop),
    within(first, loop),
    loop.end - loop.start,
    walk.neck,
    walk.request,
  );
  return { at: loop.end, to: first, leg };
};
