import type { TimedStay } from "../chart/song.ts";
import type { Chord } from "../harmony/chord.ts";
import type { Neck } from "../neck/neck.ts";
import { millimetres } from "../units.ts";
import { reformedFingers } from "../voicing/fingering.ts";
import type { ShapeName, Voicing } from "../voicing/voicing.ts";
import { type FretRange, voicingsOf } from "../voicing/voicingsOf.ts";
import { bestPath, type Layers } from "./bestPath.ts";
import { legMicrometres, travelMicrometres } from "./cost.ts";
import type { Aim, Leg, Placement, Route } from "./route.ts";

/** What the planner is asked for. */
export type PlanRequest = {
  readonly aim: Aim;
  readonly shapes: readonly ShapeName[];
  readonly range: FretRange;
  /** The change from the last chord back to the first counts too. */
  readonly goesRound: boolean;
};

/** A route, or the stays that no allowed voicing reaches (each chord once, in order of playing). */
export type Plan =
  | { readonly kind: "route"; readonly route: Route }
  | { readonly kind: "impossible"; readonly stays: readonly TimedStay[] };

type HeldStay = TimedStay & { readonly chord: Chord };

const isHeld = (stay: TimedStay): stay is HeldStay => stay.chord !== null;

/** One list of voicings for each chord, and one list of costs for each pair of chords. */
const layersOf = (
  stays: readonly HeldStay[],
  voicings: ReadonlyMap<string, readonly Voicing[]>,
  aim: Aim,
): Layers => {
  const costs = new Map<string, Float64Array>();
  const candidates = (index: number): readonly Voicing[] =>
    voicings.get(stays[index]?.chord.name ?? "") ?? [];
  return {
    count: stays.length,
    width: (layer) => candidates(layer).length,
    costs: (from, to) => {
      const key = `${stays[from]?.chord.name} ${stays[to]?.chord.name}`;
      const known = costs.get(key);
      if (known) {
        return known;
      }
      const made = Float64Array.from(
        candidates(from).flatMap((a) => candidates(to).map((b) => legMicrometres(aim, a, b))),
      );
      costs.set(key, made);
      return made;
    },
  };
};

const legBetween = (from: Placement, to: Placement, seam: boolean): Leg => {
  const reformed = reformedFingers(from.voicing, to.voicing);
  const frets = to.voicing.position - from.voicing.position;
  const moves = frets !== 0 ? "slide" : "hold";
  return {
    from: from.index,
    to: to.index,
    kind: reformed.length > 0 ? "reshape" : moves,
    frets,
    distance: millimetres(travelMicrometres(from.voicing, to.voicing) / 1000),
    reformed,
    seam,
  };
};

const legsOf = (placements: readonly Placement[], goesRound: boolean): readonly Leg[] =>
  placements.flatMap((from, index) => {
    const to = placements[index + 1];
    if (to) {
      return [legBetween(from, to, false)];
    }
    const first = placements[0];
    return goesRound && first && placements.length > 1 ? [legBetween(from, first, true)] : [];
  });

/**
 * The route that costs least by the request's aim, one placement for each stay (N.C. has none).
 * Found by dynamic programming over the stays, so no other choice of allowed voicings costs less.
 * Of several that cost the same it is the first in the order of voicingsOf, compared from the first
 * placement on: the same song always gives the same route.
 */
export const planRoute = (stays: readonly TimedStay[], neck: Neck, request: PlanRequest): Plan => {
  const held = stays.filter(isHeld);
  const voicings = new Map<string, readonly Voicing[]>();
  for (const { chord } of held) {
    if (!voicings.has(chord.name)) {
      const all = voicingsOf(chord, neck, request.range);
      voicings.set(
        chord.name,
        all.filter((voicing) => request.shapes.includes(voicing.shape)),
      );
    }
  }
  const unreachable = [...voicings].filter(([, found]) => found.length === 0).map(([name]) => name);
  if (unreachable.length > 0) {
    const firsts = unreachable.flatMap(
      (name) => held.find((stay) => stay.chord.name === name) ?? [],
    );
    return { kind: "impossible", stays: firsts };
  }
  const path = bestPath(layersOf(held, voicings, request.aim), request.goesRound);
  const placements = held.flatMap((stay, index): readonly Placement[] => {
    const voicing = voicings.get(stay.chord.name)?.[path.choice[index] ?? -1];
    if (!voicing) {
      throw new Error(`no voicing ${path.choice[index]} for stay ${index} of ${held.length}`);
    }
    const { bar, start, length, chord } = stay;
    return [{ index, bar, start, length, chord, voicing }];
  });
  const legs = legsOf(placements, request.goesRound);
  const travel = legs.reduce((sum, leg) => sum + Math.round(1000 * leg.distance), 0);
  return {
    kind: "route",
    route: {
      aim: request.aim,
      placements,
      legs,
      travel: millimetres(travel / 1000),
      cost: millimetres(path.cost / 1000),
    },
  };
};
