import type { Chord } from "../harmony/chord.ts";
import type { Neck } from "../neck/neck.ts";
import type { Voicing } from "../voicing/voicing.ts";
import { easeMicrometres } from "./cost.ts";
import { allowedVoicings, type PlanRequest } from "./problem.ts";

/** What may be chosen from, as the planner is asked for it. */
export type NearestRequest = Pick<PlanRequest, "shapes" | "range" | "strings" | "pins">;

/**
 * The nearest placement of a chord from where the hand is now, by the cost of the aim `ease`, when
 * nothing is known of what comes after. From no place at all it is the one nearest to the middle of
 * the range, from where every way is short. Of several equally near the first in the order of
 * voicingsOf; null where nothing is allowed.
 */
export const nearestPlacement = (
  from: Voicing | null,
  chord: Chord,
  neck: Neck,
  request: NearestRequest,
): Voicing | null => {
  const middle = (request.range.low + request.range.high) / 2;
  const farness = (to: Voicing): number =>
    from === null ? Math.abs(to.position - middle) : easeMicrometres(from, to);
  const nearest = (best: Voicing | null, each: Voicing): Voicing =>
    best !== null && farness(best) <= farness(each) ? best : each;
  return allowedVoicings(chord, neck, request).reduce(nearest, null as Voicing | null);
};
