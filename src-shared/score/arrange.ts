import type { Timeline } from "../chart/song.ts";
import type { Neck, StringNumber } from "../neck/neck.ts";
import { ofString, pitchAt } from "../neck/pitchAt.ts";
import { fitRolls } from "../roll/fitRolls.ts";
import { homeString } from "../roll/homeString.ts";
import type { Stroke } from "../roll/roll.ts";
import type { Leg, Placement, Route } from "../route/route.ts";
import { type Milliseconds, TICKS_PER_EIGHTH, type Tick, tick } from "../units.ts";
import type { Glide, Note, Score } from "./score.ts";

/** How long a stroke is heard when the hand has already left: a quarter of an eighth, damped. */
const LET_GO_TICKS = TICKS_PER_EIGHTH / 4;

/** When the hand leaves for the next placement: as late as its need allows, within the window. */
const leavingTick = (leg: Leg, to: Placement, eighth: Milliseconds): Tick => {
  const eighths = Math.min(leg.need, leg.window) / eighth;
  return tick(to.start - Math.round(eighths * TICKS_PER_EIGHTH));
};

const strokesOf = (timeline: Timeline, placement: Placement): readonly Stroke[] => {
  const bar = timeline.bars[placement.bar];
  if (!bar) {
    throw new Error(
      `placement ${placement.index} starts in bar ${placement.bar}, which is not there`,
    );
  }
  return fitRolls({
    offset: (placement.start - bar.start) / TICKS_PER_EIGHTH,
    length: placement.length / TICKS_PER_EIGHTH,
    eighthsPerBar: bar.length / TICKS_PER_EIGHTH,
  }).flatMap((roll) => roll.strokes);
};

/** The notes of one placement, as if the hand stayed for ever. */
const notesOf = (
  timeline: Timeline,
  neck: Neck,
  placement: Placement,
  arriving: Leg | undefined,
): readonly Note[] => {
  const end = tick(placement.start + placement.length);
  const bar = timeline.bars[placement.bar];
  const offset = bar ? placement.start - bar.start : 0;
  return strokesOf(timeline, placement).flatMap((stroke, eighth) => {
    const at = eighth * TICKS_PER_EIGHTH;
    const opens = eighth === 0 || (bar !== undefined && (offset + at) % bar.length === 0);
    return stroke.flatMap((pick): readonly Note[] => {
      const string = homeString(pick, placement.voicing, opens);
      const fret = ofString(placement.voicing.frets, string);
      if (fret === null) {
        return [];
      }
      return [
        {
          tick: tick(placement.start + at),
          ticks: tick(TICKS_PER_EIGHTH),
          until: end,
          string,
          fret,
          midi: pitchAt(neck, { string, fret }),
          finger: pick.finger,
          accent: false,
          damped: false,
          slideInto: eighth === 0 && arriving?.kind === "slide",
          letGo: false,
          glide: null,
          placement: placement.index,
        },
      ];
    });
  });
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
 * still sounds then glides along, or stops where the hand re-forms.
 */
const leaving = (note: Note, { leg, to, at, joined }: Leaving): Note => {
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
      const until = pickedAgain.get(note.string) ?? note.until;
      pickedAgain.set(note.string, note.tick);
      return next ? leaving({ ...note, until }, next) : { ...note, until };
    })
    .toReversed();
};

/** Whether the hand comes straight from the placement before, without a silence between. */
const followsOn = (before: Placement | undefined, placement: Placement): boolean =>
  before !== undefined && before.start + before.length === placement.start;

/**
 * Every note of the banjo with its tick; the rhythm section is not in it yet. The roll starts afresh with each placement. The
 * hand leaves for the next one in time for what it needs (`eighth` is how long an eighth note
 * lasts): strokes that come after are let go, in a slide the strings that still ring glide with it
 * and its first stroke is marked as slid into. The song's last notes ring to its end.
 */
export const arrange = (
  timeline: Timeline,
  neck: Neck,
  route: Route | null,
  eighth: Milliseconds,
): Score => {
  const placements = route?.placements ?? [];
  const legInto = new Map(route?.legs.filter((leg) => !leg.seam).map((leg) => [leg.to, leg]));
  const notes = placements.flatMap((placement, index) => {
    const before = placements[index - 1];
    const next = placements[index + 1];
    const arriving = followsOn(before, placement) ? legInto.get(index) : undefined;
    const leg = legInto.get(index + 1);
    const left: Leaving | null =
      leg && next && leg.need > 0
        ? { leg, to: next, at: leavingTick(leg, next, eighth), joined: followsOn(placement, next) }
        : null;
    return soundingOut(notesOf(timeline, neck, placement, arriving), left);
  });
  return {
    meter: timeline.meter,
    length: timeline.length,
    bars: timeline.bars,
    notes,
    hits: [],
  };
};
