import type { Timeline } from "../chart/song.ts";
import type { Chord } from "../harmony/chord.ts";
import { pitchClassOf } from "../harmony/noteName.ts";
import type { Neck } from "../neck/neck.ts";
import { ofString, pitchAt } from "../neck/pitchAt.ts";
import type { Pattern } from "../roll/pattern.ts";
import type { Picking } from "../roll/picking.ts";
import { fret, type Milliseconds } from "../units.ts";
import { sameGrip } from "../voicing/sameGrip.ts";
import type { ShapeName, StringSet, Voicing } from "../voicing/voicing.ts";
import { type FretRange, voicingsOf } from "../voicing/voicingsOf.ts";
import { type Charge, chargesOf, type Step } from "./aims.ts";
import { longestOf, windowsOf } from "./change.ts";
import type { Criterion, Layers } from "./layers.ts";
import type { Hand } from "./movement.ts";
import { isPinned, type Pin, pinIsFor, pinsAllow } from "./pins.ts";
import type { Aim } from "./route.ts";
import { type Slot, slotsOf } from "./slot.ts";

/** What the planner is asked for. */
export type PlanRequest = {
  readonly aim: Aim;
  readonly shapes: readonly ShapeName[];
  readonly range: FretRange;
  readonly strings: StringSet;
  /** The change from the last chord back to the first counts too. */
  readonly goesRound: boolean;
  /** How many voicings one chord takes in turn where it lasts two measures or more. */
  readonly perChord: 1 | 2;
  readonly hand: Hand;
  /** How long an eighth note lasts. */
  readonly eighth: Milliseconds;
  /** Every place of the chart is held the same each time it is played. */
  readonly alike: boolean;
  /** Held ones count whatever the shapes and the range. */
  readonly pins: readonly Pin[];
  /** What the right hand plays, which decides how long a change may take. */
  readonly picking: Picking;
  /** The player's own patterns, which the picking names. */
  readonly patterns: readonly Pattern[];
};

/** A song's slots with the voicings each may take, and what a path through them is judged by. */
export type Problem = {
  readonly slots: readonly Slot[];
  /** For each slot, in the order of voicingsOf. */
  readonly voicings: readonly (readonly Voicing[])[];
  readonly layers: Layers;
  readonly criteria: readonly Criterion[];
  readonly goesRound: boolean;
};

/** Two parts of one stay that do not move between them: what two voicings to a chord are there for. */
const unmoved: Charge = {
  by: "sum",
  of: (from, to, step) =>
    step.from.stay === step.to.stay && step.seam === null && sameGrip(from, to) ? 1 : 0,
};

/** A kind of step, and a slot from which one of it leads. */
type StepKind = { readonly from: number; readonly step: Step };

/**
 * The steps from each slot by their kind: what a charge may look at is the chords, the window, and
 * whether the step is the seam or within a stay.
 */
const stepKindsOf = (
  slots: readonly Slot[],
  length: number,
): { readonly kinds: readonly StepKind[]; readonly kindOf: readonly number[] } => {
  const known = new Map<string, number>();
  const kinds: StepKind[] = [];
  const kindOf = slots.map((left, from) => {
    const to = (from + 1) % slots.length;
    const reached = slots[to] ?? left;
    const step: Step = { from: left, to: reached, seam: to <= from ? length : null };
    const longest = longestOf(windowsOf(left, reached, step.seam));
    const name = `${left.chord.name} ${reached.chord.name} ${longest} ${step.seam} ${left.stay === reached.stay}`;
    const kind = known.get(name) ?? kinds.length;
    if (kind === kinds.length) {
      known.set(name, kind);
      kinds.push({ from, step });
    }
    return kind;
  });
  return { kinds, kindOf };
};

/** What the steps of one kind cost, voicing by voicing. */
const costsOf = (
  of: Charge["of"],
  from: readonly Voicing[],
  to: readonly Voicing[],
  step: Step,
): Float64Array => {
  const costs = new Float64Array(from.length * to.length);
  let at = 0;
  for (const a of from) {
    for (const b of to) {
      costs[at] = of(a, b, step);
      at += 1;
    }
  }
  return costs;
};

/** Charges as criteria; costs are worked out once for each kind of step, when first asked for. */
const criteriaOf = (
  charges: readonly Charge[],
  slots: readonly Slot[],
  voicings: readonly (readonly Voicing[])[],
  length: number,
): readonly Criterion[] => {
  const { kinds, kindOf } = stepKindsOf(slots, length);
  const tables = new Map<Charge["of"], Float64Array[]>();
  return charges.map(({ by, of }): Criterion => {
    // Two criteria may judge by the same costs: the worst of them, and their sum.
    const known = tables.get(of) ?? [];
    tables.set(of, known);
    return {
      by,
      costs: (from) => {
        const kind = kindOf[from] ?? -1;
        const found = known[kind];
        if (found) {
          return found;
        }
        const one = kinds[kind];
        if (!one) {
          throw new Error(`no step from slot ${from} of ${slots.length}`);
        }
        const next = voicings[(one.from + 1) % slots.length] ?? [];
        const made = costsOf(of, voicings[one.from] ?? [], next, one.step);
        known[kind] = made;
        return made;
      },
    };
  });
};

/** The problem with other voicings open in its slots. */
export const withOpen = (problem: Problem, open: readonly Uint8Array[]): Problem => ({
  ...problem,
  layers: { ...problem.layers, open: (layer) => open[layer] ?? new Uint8Array() },
});

/** The problem with only the voicings that `keeps` lets stand. */
export const narrowed = (
  problem: Problem,
  keeps: (slot: Slot, voicing: Voicing) => boolean,
): Problem =>
  withOpen(
    problem,
    problem.slots.map((slot, layer) => {
      const voicings = problem.voicings[layer] ?? [];
      return problem.layers.open(layer).map((open, state) => {
        const voicing = voicings[state];
        return open && voicing && keeps(slot, voicing) ? 1 : 0;
      });
    }),
  );

const isWithin = (
  voicing: Voicing,
  shapes: readonly ShapeName[],
  { low, high }: FretRange,
): boolean =>
  shapes.includes(voicing.shape) &&
  voicing.frets.every((each) => each === null || (each >= low && each <= high));

/** Whether the lowest string sounds the tone after a chord's slash. */
const hasBassBelow = (chord: Chord, voicing: Voicing, neck: Neck): boolean => {
  const lowest = ([4, 3, 2, 1] as const).find((string) => voicing.frets[string - 1] !== null);
  const stopped = lowest === undefined ? null : ofString(voicing.frets, lowest);
  return (
    chord.bass !== null &&
    lowest !== undefined &&
    stopped !== null &&
    pitchAt(neck, { string: lowest, fret: stopped }) % 12 === pitchClassOf(chord.bass)
  );
};

/** What a chord may take: 1 in `usual` for a voicing that it may take without a pin. */
export type Allowed = { readonly voicings: readonly Voicing[]; readonly usual: Uint8Array };

/**
 * Every voicing that a chord may take: within shapes, strings and range, and those that pins hold
 * somewhere, which are not usual elsewhere. A slash chord takes those with the bass tone lowest where
 * there are any, else it leaves the bass tone to the bass.
 */
export const allowedVoicings = (
  chord: Chord,
  neck: Neck,
  { shapes, range, strings, pins }: Pick<PlanRequest, "shapes" | "range" | "strings" | "pins">,
): Allowed => {
  const all = voicingsOf(chord, neck, { low: fret(1), high: neck.lastFret }, strings);
  const within = all.filter((voicing) => isWithin(voicing, shapes, range));
  const withBass = within.filter((voicing) => hasBassBelow(chord, voicing, neck));
  const usual = new Set(withBass.length > 0 ? withBass : within);
  const voicings = all.filter(
    (voicing) => usual.has(voicing) || isPinned(pins, chord.name, voicing),
  );
  return {
    voicings,
    usual: Uint8Array.from(voicings, (voicing) => (usual.has(voicing) ? 1 : 0)),
  };
};

/** What a chord may take where nothing is pinned. */
export const usualVoicings = ({ voicings, usual }: Allowed): readonly Voicing[] =>
  voicings.filter((_, state) => usual[state] === 1);

/** What a slot may take: with a held pin what is pinned, else what is usual and no pin avoids. */
const openAt = (slot: Slot, { voicings, usual }: Allowed, pins: readonly Pin[]): Uint8Array => {
  const own = pins.filter((pin) => pinIsFor(pin, slot));
  if (own.length === 0) {
    return usual;
  }
  const isHeld = own.some((pin) => pin.kind === "hold");
  return usual.map((is, state) => {
    const voicing = voicings[state];
    return voicing && (isHeld || is === 1) && pinsAllow(own, slot, voicing) ? 1 : 0;
  });
};

/** The pins as they count: where every time is alike, a pin for one time is a pin for all. */
export const pinsInForce = ({
  pins,
  alike,
}: Pick<PlanRequest, "pins" | "alike">): readonly Pin[] =>
  alike ? pins.map((pin) => ({ ...pin, time: null })) : pins;

/** Sets up what a request asks of a song; `slots` are those of the same song, where they are known. */
export const problemOf = (
  timeline: Pick<Timeline, "stays" | "bars" | "meter" | "length">,
  neck: Neck,
  asked: PlanRequest,
  slots: readonly Slot[] = slotsOf(timeline, neck, asked),
): Problem => {
  const request = { ...asked, pins: pinsInForce(asked) };
  const byChord = new Map<string, Allowed>();
  const allowed = slots.map(({ chord }) => {
    const own = byChord.get(chord.name) ?? allowedVoicings(chord, neck, request);
    byChord.set(chord.name, own);
    return own;
  });
  const voicings = allowed.map((own) => own.voicings);
  const open = slots.map((slot, index) => {
    const own = allowed[index];
    return own ? openAt(slot, own, request.pins) : new Uint8Array();
  });
  const { aim, hand, eighth, perChord } = request;
  const ofAim = chargesOf(aim, { neck, hand, eighth });
  const charges = perChord === 2 ? [unmoved, ...ofAim] : ofAim;
  return {
    slots,
    voicings,
    layers: {
      count: slots.length,
      width: (layer) => voicings[layer]?.length ?? 0,
      open: (layer) => open[layer] ?? new Uint8Array(),
      stride: (layer) => voicings[(layer + 1) % slots.length]?.length ?? 0,
      firstNext: () => 0,
    },
    criteria: criteriaOf(charges, slots, voicings, timeline.length),
    goesRound: request.goesRound,
  };
};
