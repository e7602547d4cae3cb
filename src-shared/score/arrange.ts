import type { Timeline } from "../chart/song.ts";
import type { Neck, StringNumber } from "../neck/neck.ts";
import { ofString, pitchAt } from "../neck/pitchAt.ts";
import { struckBy } from "../roll/homeString.ts";
import type { PatternStroke } from "../roll/pattern.ts";
import { onFifth } from "../roll/played.ts";
import type { Leg, Placement, Route } from "../route/route.ts";
import type { Slot } from "../route/slot.ts";
import { type Fret, fret, type Milliseconds, TICKS_PER_EIGHTH, type Tick, tick } from "../units.ts";
import type { Voicing } from "../voicing/voicing.ts";
import type { Glide, Note, Score } from "./score.ts";

/** How long a stroke is heard when the hand has already left: a quarter of an eighth, damped. */
const LET_GO_TICKS = TICKS_PER_EIGHTH / 4;

/** How long a damped stroke is heard: half an eighth. A design choice. */
const DAMPED_TICKS = TICKS_PER_EIGHTH / 2;

/** When the hand leaves for the next placement: as late as its need allows, within the window. */
const leavingTick = (leg: Leg, to: Placement, eighth: Milliseconds): Tick => {
  const eighths = Math.min(leg.need, leg.window) / eighth;
  return tick(to.start - Math.round(eighths * TICKS_PER_EIGHTH));
};

/** The change out of a placement makes its right hand cover it with the open fifth string. */
const isCovered = ({ exits }: Slot, leg: Leg | undefined): boolean =>
  leg?.way === "open" || (leg?.way === "too-fast" && exits.at(-1)?.way === "open");

/** What the right hand really plays: as the pattern has it, and the cover where it is needed. */
const strokesOf = (slot: Slot, leaving: Leg | undefined): readonly PatternStroke[] => {
  const { strokes, cover } = slot.played;
  return isCovered(slot, leaving)
    ? strokes.map((stroke, eighth) => (eighth === cover ? onFifth(stroke) : stroke))
    : strokes;
};

const fretOn = ({ frets }: Voicing, string: StringNumber): Fret | null =>
  string === 5 ? fret(0) : ofString(frets, string);

/** The notes of one placement, as if the hand stayed for ever. */
const notesOf = (
  neck: Neck,
  placement: Placement,
  strokes: readonly PatternStroke[],
  arriving: Leg | undefined,
): readonly Note[] => {
  const end = tick(placement.start + placement.length);
  let next: Tick = end;
  const notes = strokes.toReversed().map((stroke, fromEnd): readonly Note[] => {
    const { accent, damped } = stroke;
    const at = tick(end - (fromEnd + 1) * TICKS_PER_EIGHTH);
    const written = damped ? TICKS_PER_EIGHTH : next - at;
    const own = struckBy(stroke, placement.voicing).flatMap(({ pick, string }): readonly Note[] => {
      const stopped = fretOn(placement.voicing, string);
      return stopped === null
        ? []
        : [
            {
              tick: at,
              ticks: tick(written),
              until: damped ? tick(at + DAMPED_TICKS) : end,
              string,
              fret: stopped,
              midi: pitchAt(neck, { string, fret: stopped }),
              finger: pick.finger,
              accent,
              damped,
              slideInto: at === placement.start && string !== 5 && arriving?.kind === "slide",
              letGo: false,
              glide: null,
              placement: placement.index,
            },
          ];
    });
    next = own.length > 0 ? at : next;
    return own;
  });
  return notes.toReversed().flat();
};

/** A change that the notes before it make way for. */
type Leaving = {
  readonly leg: Leg;
  readonly to: Placement;
  readonly at: Tick;
  /** No silence lies between. */
  readonly joined: boolean;
};

/**
 * What a change does to a note before it. One struck after the hand has left is let go; one that
 * still sounds then glides along, or stops where the hand re-forms. The open fifth string needs no
 * hand.
 */
const leaving = (note: Note, { leg, to, at, joined }: Leaving): Note => {
  if (note.string === 5) {
    return note;
  }
  if (note.tick >= at) {
    return { ...note, letGo: true, until: tick(Math.min(note.until, note.tick + LET_GO_TICKS)) };
  }
  if (note.until <= at) {
    return note;
  }
  const toFret = ofString(to.voicing.frets, note.string);
  if (joined && leg.kind === "slide" && toFret !== null) {
    const glide: Glide = { start: at, end: to.start, toFret };
    return { ...note, glide };
  }
  return { ...note, until: at };
};

/** Each string sounds until it is picked again; then the change that follows has its say. */
const soundingOut = (notes: readonly Note[], next: Leaving | null): readonly Note[] => {
  const pickedAgain = new Map<StringNumber, Tick>();
  return notes
    .toReversed()
    .map((note) => {
      const until = tick(Math.min(pickedAgain.get(note.string) ?? note.until, note.until));
      pickedAgain.set(note.string, note.tick);
      return next ? leaving({ ...note, until }, next) : { ...note, until };
    })
    .toReversed();
};

/** Whether the hand comes straight from the placement before, without a silence between. */
const followsOn = (before: Placement | undefined, placement: Placement): boolean =>
  before !== undefined && before.start + before.length === placement.start;

/**
 * Every note of the banjo with its tick; the rhythm section is not in it yet. The right hand starts
 * afresh with each placement, which plays what its slot has (`slots[i]` for the placement of index
 * i). The hand leaves for the next one in time for what it needs (`eighth` is how long an eighth note
 * lasts): strokes that come after are let go, in a slide the strings that still ring glide with it
 * and its first stroke is marked as slid into. The song's last notes ring to its end; where the route
 * goes round they make way for its first.
 */
export const arrange = (
  timeline: Timeline,
  neck: Neck,
  route: Route | null,
  slots: readonly Slot[],
  eighth: Milliseconds,
): Score => {
  const placements = route?.placements ?? [];
  const legOut = new Map(route?.legs.map((leg) => [leg.from, leg]));
  const legInto = new Map(route?.legs.filter((leg) => !leg.seam).map((leg) => [leg.to, leg]));
  const [first] = placements;
  /** The first placement as it comes round: reached only by a seam. */
  const again = first && { ...first, start: tick(first.start + timeline.length) };
  const notes = placements.flatMap((placement, index) => {
    const before = placements[index - 1];
    const next = placements[index + 1] ?? again;
    const arriving = followsOn(before, placement) ? legInto.get(index) : undefined;
    const leg = legOut.get(index);
    const left: Leaving | null =
      leg && next && leg.need > 0
        ? { leg, to: next, at: leavingTick(leg, next, eighth), joined: followsOn(placement, next) }
        : null;
    const slot = slots[index];
    if (!slot) {
      throw new Error(`placement ${index} has no slot`);
    }
    const strokes = strokesOf(slot, leg);
    return soundingOut(notesOf(neck, placement, strokes, arriving), left);
  });
  return {
    meter: timeline.meter,
    length: timeline.length,
    bars: timeline.bars,
    notes,
    hits: [],
  };
};
