import type { StringNumber } from "../neck/neck.ts";
import { ofString } from "../neck/pitchAt.ts";
import type { Finger, Voicing } from "../voicing/voicing.ts";
import { type ChangePlace, changeOf, changePlaces, loadOf } from "./changePlaces.ts";
import { itemId } from "./itemId.ts";
import type { Planned } from "./planned.ts";
import type { Change, Mark, Round } from "./practice.ts";
import { marksAt, roundsOf } from "./standing.ts";

/**
 * Why a change is hard: there is no time for it at this tempo; notes have to be let go for it; the
 * hand goes five frets or more; fingers cross over strings; fingers are formed anew without crossing;
 * the player has marked it as not yet clean.
 */
export type Why = "no-time" | "let-go" | "long-slide" | "fingers-cross" | "new-grip" | "not-yet";

/** A change of a song, wherever it comes, and how hard it is at the song's tempo. */
export type Trouble = {
  readonly change: Change;
  /** Every place that makes it, in order; at least one. */
  readonly places: readonly ChangePlace[];
  /** Where it is hardest; the first of those equally hard. */
  readonly hardest: ChangePlace;
  /** Need over window where it is hardest: above 1 there is no time. */
  readonly load: number;
  readonly why: readonly Why[];
  /** The last marks that say something of this tempo, the latest last. */
  readonly marks: readonly Mark[];
};

/** Frets from which on a slide is called long. A design choice. */
const LONG_SLIDE = 5;

const strings: readonly StringNumber[] = [1, 2, 3, 4];

/** The strings that each finger stops; none for a finger that is off. */
const stringsOf = ({ fingers }: Voicing, finger: Finger): readonly number[] =>
  strings.filter((string) => ofString(fingers, string) === finger);

const pairs: readonly (readonly [Finger, Finger])[] = [
  [1, 2],
  [1, 3],
  [1, 4],
  [2, 3],
  [2, 4],
  [3, 4],
];

const liesAbove = (above: readonly number[], below: readonly number[]): boolean =>
  above.length > 0 && below.length > 0 && Math.max(...above) < Math.min(...below);

/** Whether two fingers change sides: one was nearer to string 1 before, the other is after. */
export const fingersCross = (from: Voicing, to: Voicing): boolean =>
  pairs.some(([one, other]) => {
    const [before, after] = [from, to].map((voicing) => ({
      one: stringsOf(voicing, one),
      other: stringsOf(voicing, other),
    }));
    if (!before || !after) return false;
    return (
      (liesAbove(before.one, before.other) && liesAbove(after.other, after.one)) ||
      (liesAbove(before.other, before.one) && liesAbove(after.one, after.other))
    );
  });

const whyOf = ({ leg, from, to }: ChangePlace, marks: readonly Mark[]): readonly Why[] => {
  const cross = fingersCross(from.voicing, to.voicing);
  const found: readonly (readonly [Why, boolean])[] = [
    ["no-time", leg.way === "too-fast"],
    ["let-go", leg.way === "let-one" || leg.way === "let-two"],
    ["long-slide", Math.abs(leg.frets) >= LONG_SLIDE],
    ["fingers-cross", cross],
    ["new-grip", !cross && leg.reformed.length > 0],
    ["not-yet", marks.includes("not-yet")],
  ];
  return found.flatMap(([why, is]) => (is ? [why] : []));
};

/**
 * How much a change needs work: its load, up to half as much again where every mark is a miss, down
 * to half where every mark is clean. Laplace's rule of succession (n + 1) / (k + 2) stands for few
 * marks; that load and marks weigh like this is a design choice.
 * @example urgency(0.8, []) // => 0.8
 */
export const urgency = (load: number, marks: readonly Mark[]): number => {
  const misses = marks.filter((mark) => mark === "not-yet").length;
  return load * (0.5 + (misses + 1) / (marks.length + 2));
};

/**
 * A song's changes, those first that need work most at the song's tempo; of equals the one that comes
 * first. A change that the song makes at several places stands once. `rounds` are this song's, in
 * order of time. Where nothing moves there is no change.
 */
export const troubleList = (walk: Planned, rounds: readonly Round[]): readonly Trouble[] => {
  const byId = new Map<string, ChangePlace[]>();
  for (const place of changePlaces(walk)) {
    const id = itemId(changeOf(place));
    byId.set(id, [...(byId.get(id) ?? []), place]);
  }
  const troubles = [...byId.values()].flatMap((places): readonly Trouble[] => {
    const [first] = places;
    if (!first) return [];
    const hardest = places.reduce((most, place) =>
      loadOf(place.leg) > loadOf(most.leg) ? place : most,
    );
    const change = changeOf(first);
    const marks = marksAt(roundsOf(rounds, change), walk.tempo);
    const why = whyOf(hardest, marks);
    return [{ change, places, hardest, load: loadOf(hardest.leg), why, marks }];
  });
  return troubles.toSorted((a, b) => urgency(b.load, b.marks) - urgency(a.load, a.marks));
};
