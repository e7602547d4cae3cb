import type { Leg, Placement } from "../route/route.ts";
import { type Tick, tick } from "../units.ts";
import { itemId } from "./itemId.ts";
import type { Planned } from "./planned.ts";
import type { Change, HeldChord } from "./practice.ts";

/** Where a song makes a change. */
export type ChangePlace = {
  readonly leg: Leg;
  readonly from: Placement;
  readonly to: Placement;
  /** When the new chord is due; at the song's end where it goes round. */
  readonly due: Tick;
  /** 0-based bar of the song as played in which the new chord comes. */
  readonly bar: number;
};

const heldChord = ({ chord, voicing }: Placement): HeldChord => ({
  chord: chord.name,
  frets: voicing.frets,
});

/** A change of a route as it is practised. */
export const changeOf = ({ from, to }: Pick<ChangePlace, "from" | "to">): Change => ({
  kind: "change",
  from: heldChord(from),
  to: heldChord(to),
});

/** How much of the time there is the hand needs: 1 is all of it, above 1 more than there is. */
export const loadOf = ({ need, window }: Pick<Leg, "need" | "window">): number => need / window;

/** Every change of a song at which something moves, in order; the one that goes round comes last. */
export const changePlaces = ({ route, timeline }: Planned): readonly ChangePlace[] =>
  (route?.legs ?? []).flatMap((leg): readonly ChangePlace[] => {
    const [from, to] = [route?.placements[leg.from], route?.placements[leg.to]];
    if (!from || !to || leg.need === 0) return [];
    return [{ leg, from, to, due: tick(to.start + (leg.seam ? timeline.length : 0)), bar: to.bar }];
  });

/**
 * The place where a change is hardest, the first of those equally hard; null where the song, as it is
 * planned now, does not make it.
 */
export const hardestPlace = (walk: Planned, change: Change): ChangePlace | null => {
  const id = itemId(change);
  return changePlaces(walk).reduce<ChangePlace | null>((hardest, place) => {
    if (itemId(changeOf(place)) !== id) return hardest;
    return hardest === null || loadOf(place.leg) > loadOf(hardest.leg) ? place : hardest;
  }, null);
};
