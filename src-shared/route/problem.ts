import type { Timeline } from "../chart/song.ts";
import type { Chord } from "../harmony/chord.ts";
import { pitchClassOf } from "../harmony/noteName.ts";
import type { Neck } from "../neck/neck.ts";
import { ofString, pitchAt } from "../neck/pitchAt.ts";
import type { Pattern } from "../roll/pattern.ts";
import type { Picking } from "../roll/picking.ts";
import { type Fret, fret, type Milliseconds } from "../units.ts";
import { sameGrip } from "../voicing/sameGrip.ts";
import type { ShapeName, StringSet, Voicing } from "../voicing/voicing.ts";
import { type FretRange, voicingsOf } from "../voicing/voicingsOf.ts";
import { type Charge, chargesOf, type Step } from "./aims.ts";
import { longestOf, windowsOf } from "./change.ts";
import type { Criterion, Layers } from "./choosePath.ts";
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

/**
 * Costs of a step, worked out once for each pair of chords and each kind of step between them: what
 * a charge may look at is the chords, the window, and whether the step is the seam or within a stay.
 */
const criterionOf = (
  charge: Charge,
  slots: readonly Slot[],
  voicings: readonly (readonly Voicing[])[],
  length: number,
): Criterion => {
  const known = new Map<string, Float64Array>();
  return {
    by: charge.by,
    costs: (from) => {
      const to = (from + 1) % slots.length;
      const left = slots[from];
      const reached = slots[to];
      if (!left || !reached) {
        throw new Error(`no step from slot ${from} to slot ${to} of ${slots.length}`);
      }
      const step: Step = { from: left, to: reached, seam: to <= from ? length : null };
      const longest = longestOf(windowsOf(left, reached, step.seam));
      const kind = `${left.chord.name} ${reached.chord.name} ${longest} ${step.seam} ${left.stay === reached.stay}`;
      const found = known.get(kind);
      if (found) {
        return found;
      }
      const made = Float64Array.from(
        (voicings[from] ?? []).flatMap((a) =>
          (voicings[to] ?? []).map((b) => charge.of(a, b, step)),
        ),
      );
      known.set(kind, made);
      return made;
    },
  };
};

/** A value for each layer, worked out when it is first asked for. */
const lazily = (
  count: number,
  of: (layer: number) => Uint8Array,
): ((layer: number) => Uint8Array) => {
  const known: (Uint8Array | undefined)[] = new Array(count);
  return (layer) => {
    const value = known[layer] ?? of(layer);
    known[layer] = value;
    return value;
  };
};

/** The problem with only the voicings that `keeps` lets stand. */
export const narrowed = (
  problem: Problem,
  keeps: (slot: Slot, voicing: Voicing) => boolean,
): Problem => ({
  ...problem,
  layers: {
    ...problem.layers,
    open: lazily(problem.slots.length, (layer) => {
      const slot = problem.slots[layer];
      const voicings = problem.voicings[layer] ?? [];
      return problem.layers.open(layer).map((open, state) => {
        const voicing = voicings[state];
        return open && slot && voicing && keeps(slot, voicing) ? 1 : 0;
      });
    }),
  },
});

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

/**
 * Every voicing that a chord may take: within shapes, strings and range, and those that pins hold. A
 * slash chord takes those with the bass tone lowest where there are any, else it leaves the bass
 * tone to the bass.
 */
export const allowedVoicings = (
  chord: Chord,
  neck: Neck,
  { shapes, range, strings, pins }: Pick<PlanRequest, "shapes" | "range" | "strings" | "pins">,
): readonly Voicing[] => {
  const all = voicingsOf(chord, neck, { low: fret(1), high: neck.lastFret }, strings);
  const within = all.filter((voicing) => isWithin(voicing, shapes, range));
  const withBass = within.filter((voicing) => hasBassBelow(chord, voicing, neck));
  const usual = withBass.length > 0 ? withBass : within;
  return all.filter((voicing) => usual.includes(voicing) || isPinned(pins, chord.name, voicing));
};

/** A slot with a held pin takes what is pinned; any other, what shapes, range and pins allow. */
const mayTake = (slot: Slot, voicing: Voicing, { pins, shapes, range }: PlanRequest): boolean => {
  const own = pins.filter((pin) => pinIsFor(pin, slot));
  if (own.some((pin) => pin.kind === "hold")) {
    return pinsAllow(own, slot, voicing);
  }
  return isWithin(voicing, shapes, range) && pinsAllow(own, slot, voicing);
};

/** The pins as they count: where every time is alike, a pin for one time is a pin for all. */
export const pinsInForce = ({
  pins,
  alike,
}: Pick<PlanRequest, "pins" | "alike">): readonly Pin[] =>
  alike ? pins.map((pin) => ({ ...pin, time: null })) : pins;

/** Sets up what a request asks of a song. */
export const problemOf = (
  timeline: Pick<Timeline, "stays" | "bars" | "meter" | "length">,
  neck: Neck,
  asked: PlanRequest,
): Problem => {
  const request = { ...asked, pins: pinsInForce(asked) };
  const slots = slotsOf(timeline, neck, request);
  const byChord = new Map<string, readonly Voicing[]>();
  for (const { chord } of slots) {
    if (!byChord.has(chord.name)) {
      byChord.set(chord.name, allowedVoicings(chord, neck, request));
    }
  }
  const voicings = slots.map((slot) => byChord.get(slot.chord.name) ?? []);
  const open = slots.map((slot, index) =>
    Uint8Array.from(voicings[index] ?? [], (voicing) => (mayTake(slot, voicing, request) ? 1 : 0)),
  );
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
    criteria: charges.map((charge) => criterionOf(charge, slots, voicings, timeline.length)),
    goesRound: request.goesRound,
  };
};

/** Every position that some slot's voicings have, from the lowest. */
export const positionsOf = (problem: Problem): readonly Fret[] =>
  [...new Set(problem.voicings.flat().map((voicing) => voicing.position))].toSorted(
    (a, b) => a - b,
  );
