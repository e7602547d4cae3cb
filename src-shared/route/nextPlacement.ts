import type { Chord } from "../harmony/chord.ts";
import type { Neck } from "../neck/neck.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { FretRange } from "../voicing/voicingsOf.ts";
import { easeMicrometres } from "./cost.ts";
import { allowedVoicings, type PlanRequest, usualVoicings } from "./problem.ts";

/** What may be chosen from, as the planner is asked for it. */
export type NearestRequest = Pick<PlanRequest, "shapes" | "range" | "strings" | "pins">;

/**
 * The voicing that is nearest to where the hand is, by the cost of the aim `ease`; from no place at
 * all the one nearest to the middle of the range, from where every way is short. Of several equally
 * near the first; null where there is none.
 */
export const nearestOf = (
  from: Voicing | null,
  voicings: readonly Voicing[],
  { low, high }: FretRange,
): Voicing | null => {
  const middle = (low + high) / 2;
  let best: Voicing | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const to of voicings) {
    const farness = from === null ? Math.abs(to.position - middle) : easeMicrometres(from, to);
    if (farness < least) {
      best = to;
      least = farness;
    }
  }
  return best;
};

/**
 * The nearest placement of a chord from where the hand is now, when nothing is known of what comes
 * after: the nearest of all that a request allows, in the order of voicingsOf; null where it allows
 * none.
 */
export const nearestPlacement = (
  from: Voicing | null,
  chord: Chord,
  neck: Neck,
  request: NearestRequest,
): Voicing | null =>
  nearestOf(from, usualVoicings(allowedVoicings(chord, neck, request)), request.range);
