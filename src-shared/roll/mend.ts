import { eighthsOfMeter } from "./beats.ts";
import { fingersFor, rest, voicedStrings, withLength, withStroke } from "./editPattern.ts";
import { MOST_EIGHTHS, type Pattern, type PatternPick, type PatternStroke } from "./pattern.ts";
import { type Breach, breachesOf, reachOf } from "./rollRules.ts";

const isSame = (a: Breach, b: Breach): boolean =>
  a.rule === b.rule && a.eighth === b.eighth && a.finger === b.finger;

const startsOn: PatternPick = { finger: "T", on: 3 };

type Variant = { readonly stroke: PatternStroke; readonly cost: number };

const withPicks = (stroke: PatternStroke, picks: readonly PatternPick[]): PatternStroke =>
  picks.length === 0 ? rest : { ...stroke, picks };

/** A pick's neighbours: another finger on its string, its finger on another string, or both. */
const otherPicks = (pick: PatternPick): readonly { pick: PatternPick; cost: number }[] => [
  ...fingersFor(pick.on)
    .filter((finger) => finger !== pick.finger)
    .map((finger, index) => ({ pick: { ...pick, finger }, cost: 1 + index / 10 })),
  ...reachOf[pick.finger]
    .filter((on) => on !== pick.on)
    .map((on) => ({
      pick: { ...pick, on },
      cost: 2 + Math.abs(voicedStrings.indexOf(on) - voicedStrings.indexOf(pick.on)) / 10,
    })),
  ...voicedStrings.flatMap((on) =>
    fingersFor(on).map((finger, index) => ({
      pick: { finger, on },
      cost: 3 + Math.abs(voicedStrings.indexOf(on) - voicedStrings.indexOf(pick.on)) / 10 + index,
    })),
  ),
];

/** The picks with the fingers laid over their strings in order, the thumb lowest. */
const inOrder = (picks: readonly PatternPick[]): readonly PatternPick[] =>
  picks
    .toSorted((a, b) => voicedStrings.indexOf(b.on) - voicedStrings.indexOf(a.on))
    .map((pick, index) => ({ ...pick, finger: (["T", "I", "M"] as const)[index] ?? "M" }));

/** What may stand on an eighth instead, each with how much of a change it is. */
const variantsOf = (stroke: PatternStroke): readonly Variant[] => {
  const { picks } = stroke;
  const changed = picks.flatMap((pick, at) =>
    otherPicks(pick).map((other) => ({
      stroke: withPicks(stroke, picks.with(at, other.pick)),
      cost: other.cost,
    })),
  );
  const dropped = picks.map((pick) => ({
    stroke: withPicks(
      stroke,
      picks.filter((other) => other !== pick),
    ),
    cost: picks.length > 1 ? 2.5 : 6,
  }));
  return [
    ...changed,
    ...dropped,
    { stroke: withPicks(stroke, inOrder(picks)), cost: 3 },
    ...reachOf.T.map((on) => ({
      stroke: { ...stroke, picks: [{ finger: "T" as const, on }, ...picks] },
      cost: 4 + Math.abs(voicedStrings.indexOf(on) - voicedStrings.indexOf(3)) / 10,
    })),
    { stroke: { ...stroke, picks: [startsOn] }, cost: 5 },
    { stroke: rest, cost: 6 },
  ];
};

/** The pattern in as many whole measures, filled up with rests, or cut where that is too long. */
const inWholeMeasures = (pattern: Pattern): Pattern => {
  const measure = eighthsOfMeter[pattern.meter];
  const { length } = pattern.strokes;
  if (length <= measure) {
    return pattern;
  }
  const filled = Math.ceil(length / measure) * measure;
  return withLength(pattern, filled <= MOST_EIGHTHS ? filled : filled - measure);
};

/** What is left when all else fails: the thumb on the first eighth, and rests. */
const bare = (pattern: Pattern): Pattern => {
  const silent = { ...pattern, strokes: pattern.strokes.map(() => rest) };
  const whole = inWholeMeasures(withLength(silent, Math.max(2, pattern.strokes.length)));
  return withStroke(whole, 0, () => ({ ...rest, picks: [startsOn] }));
};

type Candidate = { readonly pattern: Pattern; readonly cost: number };

const changesAt = (pattern: Pattern, eighth: number, extra: number): readonly Candidate[] => {
  const stroke = pattern.strokes[eighth];
  return stroke
    ? variantsOf(stroke).map((variant) => ({
        pattern: withStroke(pattern, eighth, () => variant.stroke),
        cost: variant.cost + extra,
      }))
    : [];
};

/** Changes on two neighbouring eighths. */
const changesOnTwo = (pattern: Pattern, eighth: number): readonly Candidate[] =>
  changesAt(pattern, eighth, 10).flatMap((first) =>
    changesAt(first.pattern, eighth + 1, first.cost),
  );

const longer = (pattern: Pattern): readonly Candidate[] =>
  pattern.strokes.length < MOST_EIGHTHS
    ? [{ pattern: withLength(pattern, pattern.strokes.length + 1), cost: 7 }]
    : [];

const cheapestFirst = (candidates: readonly Candidate[]): readonly Candidate[] =>
  candidates.toSorted((a, b) => a.cost - b.cost);

/**
 * The pattern with a breach mended by the smallest change that makes no other: another finger, then
 * another string, then a pick or the whole eighth left out, then two eighths together. null where the
 * pattern has no such breach. Mending whatever is left ends, and leaves none.
 */
export const mended = (pattern: Pattern, breach: Breach): Pattern | null => {
  const before = breachesOf(pattern);
  if (!before.some((each) => isSame(each, breach))) {
    return null;
  }
  const mends = ({ pattern: after }: Candidate): boolean =>
    breachesOf(after).every(
      (left) => !isSame(left, breach) && before.some((each) => isSame(each, left)),
    );
  const { rule, eighth } = breach;
  const steps: readonly (() => readonly Candidate[])[] = [
    () => (rule === "wrong-length" ? [{ pattern: inWholeMeasures(pattern), cost: 0 }] : []),
    () => [
      ...changesAt(pattern, eighth, 0),
      ...(rule === "finger-twice" ? changesAt(pattern, eighth - 1, 0.05) : []),
      ...longer(pattern),
    ],
    () => changesOnTwo(pattern, eighth),
  ];
  for (const candidates of steps) {
    const found = cheapestFirst(candidates()).find(mends);
    if (found) {
      return found.pattern;
    }
  }
  return bare(pattern);
};
