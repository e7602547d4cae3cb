import { difficultyBits, landingWidth } from "../route/movement.ts";
import { milliseconds } from "../units.ts";
import type { Planned } from "./planned.ts";
import type { Item, Shift, Stage } from "./practice.ts";

/**
 * What a drill of a change asks of the left hand, by the change itself and not the way back; null in
 * the song and for all that is more than one change.
 */
export const shiftOf = (
  { route, neck, request }: Planned,
  item: Item,
  stage: Stage,
): Shift | null => {
  const leg = route?.legs.find(({ need, seam }) => need > 0 && !seam);
  const to = leg && route?.placements[leg.to];
  if (item.kind !== "change" || stage === "song" || !to || leg.shortestEighth === null) return null;
  return {
    bits: difficultyBits(leg.distance, landingWidth(to.voicing.position, neck.scaleLength)),
    reformed: leg.reformed.length,
    window: milliseconds((leg.need / leg.shortestEighth) * request.eighth),
  };
};
