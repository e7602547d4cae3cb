import type { Meter, TimedBar } from "../../src-shared/chart/song.ts";
import type { Tuning } from "../../src-shared/neck/neck.ts";
import type { Leg, Route } from "../../src-shared/route/route.ts";
import { type Tick, tick } from "../../src-shared/units.ts";
import { sayAim, sayWay } from "../../src-shared/wording/sayAim.ts";
import { sayLeg } from "../../src-shared/wording/sayLeg.ts";
import { words } from "../../src-shared/wordTable.ts";
import { ceilingOf, sayChords, sayNeed } from "./routeFacts.ts";

/** One change of the song, as the list shows it. */
export type ChangeFact = {
  /** "Bar 3", where the new chord comes. */
  readonly bar: string;
  /** "G to C" */
  readonly chords: string;
  /** "Up 5 to the D shape" */
  readonly says: string;
  readonly way: string;
  /** "needs 207 of 375 ms"; null where nothing moves. */
  readonly need: string | null;
  /** "up to 112"; null where nothing moves. */
  readonly ceiling: string | null;
  readonly tooFast: boolean;
  /** What helps where it is too fast; null where nothing need. */
  readonly remedy: string | null;
  /** Where to listen from: a bar before. */
  readonly from: Tick;
};

/** Where to start so as to hear a bar before the change. */
const leadIn = (leg: Leg, route: Route, bars: readonly TimedBar[]): Tick => {
  const reached = leg.seam ? bars.length : (route.placements[leg.to]?.bar ?? 0);
  return bars[Math.max(0, reached - 1)]?.start ?? tick(0);
};

/** Another way round a change that is too fast, or the tempo to slow down to. */
const remedyFor = (
  leg: Leg,
  route: Route,
  ceiling: number,
  tuning: Tuning,
  steady: Route | null,
): string => {
  const other = steady?.legs.find(({ from }) => from === leg.from);
  const to = steady?.placements[leg.to];
  const from = steady?.placements[leg.from];
  const inTime = other && to && from && other.way !== "too-fast";
  if (inTime && route.aim !== "steady") {
    const name = sayAim("steady").name;
    const how = words.changes.fromFret(sayLeg(other, to, tuning), from.voicing.position);
    return words.changes.withAim(name, how, sayNeed(other));
  }
  return words.changes.slowDown(ceiling);
};

/**
 * Every change of a route in order. `steady` is the same song's route by that aim, from which help
 * comes where a change is too fast; null where there is none.
 */
export const changeFacts = (
  route: Route,
  bars: readonly TimedBar[],
  meter: Meter,
  tuning: Tuning,
  steady: Route | null,
): readonly ChangeFact[] =>
  route.legs.flatMap((leg): readonly ChangeFact[] => {
    const to = route.placements[leg.to];
    if (!to) return [];
    const ceiling = ceilingOf(leg, meter);
    const chords = sayChords(leg, route.placements);
    const tooFast = leg.way === "too-fast";
    return [
      {
        bar: words.changes.bar(to.bar + 1),
        chords: leg.seam ? words.changes.backToStart(chords) : chords,
        says: sayLeg(leg, to, tuning),
        way: sayWay(leg.way).name,
        need: ceiling === null ? null : sayNeed(leg),
        ceiling: ceiling === null ? null : words.changes.upTo(ceiling),
        tooFast,
        remedy: tooFast && ceiling !== null ? remedyFor(leg, route, ceiling, tuning, steady) : null,
        from: leadIn(leg, route, bars),
      },
    ];
  });
