import type { TimedStay } from "../../../src-shared/chart/song.ts";
import type { Walk } from "../../../src-shared/chartToScore.ts";
import type { Tuning } from "../../../src-shared/neck/neck.ts";
import { ticksPerBeat } from "../../../src-shared/score/tempo.ts";
import { indexAt } from "../../../src-shared/score/window.ts";
import { tick } from "../../../src-shared/units.ts";
import type { Voicing } from "../../../src-shared/voicing/voicing.ts";
import { sayFifth } from "../../../src-shared/wording/sayFifth.ts";
import { sayFingers, sayFrets, sayLeg } from "../../../src-shared/wording/sayLeg.ts";
import { sayManner } from "../../../src-shared/wording/sayManner.ts";
import { sayShape, sayVoicing } from "../../../src-shared/wording/sayShape.ts";
import { words } from "../../../src-shared/wordTable.ts";
import {
  beatsLeft,
  type ComingChange,
  comingChange,
  type Moment,
} from "../../geometry/comingChange.ts";
import { isPinned } from "./placePins.ts";

/** What stands above the neck, and the neck's own picture in words. */
export type ChangeWords = {
  readonly now: string;
  readonly nowDetail: string;
  /** Why the open fifth string is better left out; "" where it belongs to the chord. */
  readonly fifth: string;
  readonly next: string | null;
  readonly nextDetail: string;
  /** How the change is made; "" where nothing moves or the way is not known. */
  readonly manner: string;
  readonly tooFast: boolean;
  /** "Up 5", over the arrow on the neck; null without one. */
  readonly way: string | null;
  readonly label: string;
};

/** Beats counted down at once; of a longer stay the last ones. */
export const MOST_PIPS = 8;

/** What comes after a moment of a walk; nothing where it has no route. */
export const changeAt = (walk: Walk, moment: Moment): ComingChange =>
  walk.route
    ? comingChange(walk.route, moment)
    : { current: null, next: null, leg: null, loopsBack: false, since: 0, due: moment.length };

const stayAt = (walk: Walk, at: number): TimedStay | null =>
  walk.timeline.stays[indexAt(walk.timeline.stays, tick(at))] ?? null;

const sayNext = (change: ComingChange, tuning: Tuning, backToBar: number): string => {
  const { current, next, leg, loopsBack } = change;
  if (!next) return loopsBack ? words.play.loopStays : words.play.toTheEnd;
  if (leg) return sayLeg(leg, next, tuning);
  if (loopsBack) return words.play.backToBar(backToBar + 1, sayShape(next.voicing, tuning));
  return current ? sayShape(next.voicing, tuning) : sayVoicing(next.voicing, tuning);
};

const nextDetailOf = (walk: Walk, change: ComingChange, backToBar: number): string =>
  walk.route ? sayNext(change, walk.neck.tuning, backToBar) : "";

/** A voicing as it stands over the neck. */
const sayHeld = (voicing: Voicing, tuning: Tuning, pinned: boolean): string =>
  [
    sayVoicing(voicing, tuning),
    ...(pinned ? [words.play.pinned] : []),
    ...(voicing.root === null ? [words.play.noRoot] : []),
  ].join(", ");

/** A change in the words that stand on the screen. `backToBar`: 0-based first bar of the loop. */
export const changeWords = (
  walk: Walk,
  change: ComingChange,
  at: number,
  backToBar: number,
): ChangeWords => {
  const { current, next } = change;
  const held = current?.chord.name ?? stayAt(walk, at)?.chord?.name ?? "N.C.";
  const resting = walk.route ? words.play.handRests : words.play.noRoute;
  const nowDetail = current
    ? sayHeld(current.voicing, walk.neck.tuning, isPinned(walk, current.index))
    : resting;
  const manner = change.leg ? sayManner(change.leg, walk.timeline.meter) : "";
  const fingers = change.leg && change.leg.kind !== "hold" ? sayFingers(change.leg) : "";
  const comes = [nextDetailOf(walk, change, backToBar), fingers, manner].filter(
    (part) => part !== "",
  );
  const frets = current && next ? next.voicing.position - current.voicing.position : 0;
  const stays = change.leg?.kind === "hold";
  return {
    now: held,
    nowDetail,
    fifth: current ? (sayFifth(current.chord, walk.neck) ?? "") : "",
    next: next?.chord.name ?? null,
    nextDetail: nextDetailOf(walk, change, backToBar),
    manner,
    tooFast: change.leg?.way === "too-fast",
    way: current && next && !stays ? sayFrets(frets) : null,
    label: words.neck.now(
      held,
      nowDetail,
      next ? words.play.next(next.chord.name, comes.join(". ")) : "",
    ),
  };
};

/** Beats as pips: how many there are, and how many have begun. */
export type Pips = { readonly total: number; readonly filled: number; readonly label: string };

/** The beats until a change is due, the last eight at most. */
export const pipsTo = (walk: Walk, change: ComingChange, at: number): Pips => {
  const beat = ticksPerBeat(walk.timeline.meter);
  const left = beatsLeft(at, change.due, beat);
  const whole = beatsLeft(Math.min(change.since, at), change.due, beat);
  const total = walk.route ? Math.min(MOST_PIPS, Math.max(1, whole)) : 0;
  return {
    total,
    filled: Math.max(0, total - left + 1),
    label: words.play.beatsLeft(left),
  };
};

/** The hand path and tablature in words: which changes are too fast, if any. */
export const lanesLabel = (walk: Walk): string => {
  const { placements = [], legs = [] } = walk.route ?? {};
  const tooFast = legs.flatMap(({ from, to, way }) => {
    const [left, reached] = [placements[from], placements[to]];
    return way === "too-fast" && left && reached
      ? [words.lanes.tooFastAt(left.chord.name, reached.chord.name, reached.bar + 1)]
      : [];
  });
  return words.lanes.says(tooFast.slice(0, 4), Math.max(0, tooFast.length - 4));
};
