import type { Leg, Placement, Route } from "../../src-shared/route/route.ts";
import type { Span } from "../../src-shared/score/score.ts";

/** What the hand holds now, what it will hold, and when. */
export type ComingChange = {
  /** null while no chord is played. */
  readonly current: Placement | null;
  /** null where nothing else comes. */
  readonly next: Placement | null;
  /** The way there; null where the hand comes from a rest or jumps back with the loop. */
  readonly leg: Leg | null;
  /** `next` is reached because a loop starts over. */
  readonly loopsBack: boolean;
  /** Tick from which the hand has stayed or rested. */
  readonly since: number;
  /** Tick at which the next is due, or at which the loop or the song ends. */
  readonly due: number;
};

/** Where the music is. */
export type Moment = {
  readonly tick: number;
  /** Index of the placement held; -1 is none. */
  readonly placement: number;
  /** Starts over at its end, for as long as `tick` is within it; null goes straight on. */
  readonly loop: Span | null;
  /** Tick at which the song ends. */
  readonly length: number;
};

/** What comes after a moment. A loop of one placement has nothing next. */
export const comingChange = (route: Route, moment: Moment): ComingChange => {
  const { placements, legs } = route;
  const { tick, loop, length } = moment;
  const current = placements[moment.placement] ?? null;
  const following = current
    ? (placements[current.index + 1] ?? null)
    : (placements.find(({ start }) => start >= tick) ?? null);
  const before = current ? null : placements.findLast((one) => one.start + one.length <= tick);
  const began = current?.start ?? (before ? before.start + before.length : 0);
  const since = Math.max(began, loop?.start ?? 0);
  const turn = loop && tick >= loop.start && tick < loop.end ? loop : null;
  if (!turn || (following && following.start < turn.end)) {
    const leg = legs.find(({ from, to }) => from === current?.index && to === following?.index);
    const due = following?.start ?? length;
    return { current, next: following, leg: leg ?? null, loopsBack: false, since, due };
  }
  const first = placements.find((one) => one.start + one.length > turn.start) ?? null;
  const seam = legs.find(({ from, to }) => from === current?.index && to === first?.index) ?? null;
  const next = first === current ? null : first;
  return { current, next, leg: seam, loopsBack: true, since, due: turn.end };
};

/** How many beats are left until `due`, a beat begun counting whole; never negative. */
export const beatsLeft = (tick: number, due: number, ticksPerBeat: number): number =>
  Math.max(0, Math.ceil((due - tick) / ticksPerBeat));
