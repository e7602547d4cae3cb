import type { Meter } from "../../src-shared/chart/song.ts";
import type { Tuning } from "../../src-shared/neck/neck.ts";
import type { Leg, Placement, Route } from "../../src-shared/route/route.ts";
import { tempoOfEighth } from "../../src-shared/score/tempo.ts";
import type { ShapeName } from "../../src-shared/voicing/voicing.ts";
import { sayFrets } from "../../src-shared/wording/sayLeg.ts";
import { sayShape } from "../../src-shared/wording/sayShape.ts";
import { words } from "../../src-shared/wordTable.ts";
import { beatNote } from "./facts.ts";

/** Room for what floating point adds to a tempo that is whole. */
const SPARE = 1e-6;

/**
 * The fastest whole tempo, in beats of the meter a minute, at which a change can be made at all;
 * null where nothing moves.
 */
export const ceilingOf = (leg: Leg, meter: Meter): number | null =>
  leg.shortestEighth === null ? null : Math.floor(tempoOfEighth(meter, leg.shortestEighth) + SPARE);

/** The change that sets a route's ceiling: the first of the hardest; null where nothing moves. */
export const hardestLeg = (route: Route): Leg | null =>
  route.legs.reduce<Leg | null>(
    (hardest, leg) => ((leg.shortestEighth ?? 0) > (hardest?.shortestEighth ?? 0) ? leg : hardest),
    null,
  );

/** "G to C", the chords of a change. */
export const sayChords = (leg: Leg, placements: readonly Placement[]): string =>
  words.changes.chords(
    placements[leg.from]?.chord.name ?? "",
    placements[leg.to]?.chord.name ?? "",
  );

/** "needs 345 of 375 ms": what the hand needs of what the music leaves it; the unit stays by its number. */
export const sayNeed = ({ need, window }: Pick<Leg, "need" | "window">): string =>
  words.changes.needs(Math.round(need), Math.round(window));

/** A route's hardest change: "C to D, up 7: needs 345 of 375 ms". */
export const sayHardest = (route: Route): string => {
  const leg = hardestLeg(route);
  return leg
    ? words.changes.hardest(sayChords(leg, route.placements), sayFrets(leg.frets), sayNeed(leg))
    : words.changes.noneMoves;
};

/** How fast a route can be played: "up to 112 half notes a minute". */
export const sayCeiling = (route: Route, meter: Meter): string => {
  const leg = hardestLeg(route);
  const ceiling = leg && ceilingOf(leg, meter);
  return ceiling === null
    ? words.changes.anyTempo
    : words.changes.upToBeats(ceiling, beatNote(meter.unit));
};

/** A shape as a route uses it: its form, and its name in the tuning. */
export type ShapeUsed = { readonly shape: ShapeName; readonly says: string };

/** The shapes that a route uses, the most used first. */
export const shapesUsed = (route: Route, tuning: Tuning): readonly ShapeUsed[] => {
  const counts = new Map<string, { readonly used: ShapeUsed; readonly times: number }>();
  for (const { voicing } of route.placements) {
    const used = { shape: voicing.shape, says: sayShape(voicing, tuning) };
    const key = `${used.shape} ${used.says}`;
    counts.set(key, { used, times: (counts.get(key)?.times ?? 0) + 1 });
  }
  return [...counts.values()].toSorted((a, b) => b.times - a.times).map(({ used }) => used);
};

/** How many changes slide, and how many form the hand anew. */
export const countChanges = (
  route: Route,
): { readonly slides: number; readonly reshapes: number } => ({
  slides: route.legs.filter(({ kind }) => kind === "slide").length,
  reshapes: route.legs.filter(({ kind }) => kind === "reshape").length,
});

/** Whether two routes hold the same grip everywhere. */
export const isSameRoute = (a: Route, b: Route): boolean =>
  a.placements.length === b.placements.length &&
  a.placements.every(
    ({ voicing }, index) => voicing.frets.join() === b.placements[index]?.voicing.frets.join(),
  );

/** The chords that two routes of one song never hold in the same grip, in the song's order. */
export const chordsMoved = (route: Route, from: Route): readonly string[] => {
  const gripsOf = ({ placements }: Route): ReadonlySet<string> =>
    new Set(placements.map(({ chord, voicing }) => `${chord.name} ${voicing.frets.join()}`));
  const here = gripsOf(from);
  const kept = new Set(
    route.placements
      .filter(({ chord, voicing }) => here.has(`${chord.name} ${voicing.frets.join()}`))
      .map(({ chord }) => chord.name),
  );
  return [...new Set(route.placements.map(({ chord }) => chord.name))].filter(
    (name) => !kept.has(name),
  );
};
