import type { Timeline } from "../chart/song.ts";
import type { Neck, StringNumber } from "../neck/neck.ts";
import { ofString, pitchAt } from "../neck/pitchAt.ts";
import { fitRolls } from "../roll/fitRolls.ts";
import type { Stroke } from "../roll/roll.ts";
import type { Leg, Placement, Route } from "../route/route.ts";
import { TICKS_PER_EIGHTH, type Tick, tick } from "../units.ts";
import { rhythmSection } from "./rhythmSection.ts";
import type { Glide, Note, Score } from "./score.ts";

/**
 * How long before a change's first note the hand leaves: the second half of the last eighth, so
 * that every note of the roll still speaks. Letting go is good practice, not a fault.
 */
export const LEAVING_TICKS: Tick = tick(TICKS_PER_EIGHTH / 2);

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
  return strokesOf(timeline, placement).flatMap((stroke, eighth) =>
    stroke.flatMap((pick): readonly Note[] => {
      const fret = ofString(placement.voicing.frets, pick.string);
      if (fret === null) {
        return [];
      }
      return [
        {
          tick: tick(placement.start + eighth * TICKS_PER_EIGHTH),
          ticks: tick(TICKS_PER_EIGHTH),
          until: end,
          string: pick.string,
          fret,
          midi: pitchAt(neck, { string: pick.string, fret }),
          finger: pick.finger,
          slideInto: eighth === 0 && arriving?.kind === "slide",
          glide: null,
          placement: placement.index,
        },
      ];
    }),
  );
};

/** What becomes of a note that still sounds when the hand leaves: it glides along, or is let go. */
const leaving = (note: Note, leg: Leg, to: Placement): Note => {
  const start = tick(to.start - LEAVING_TICKS);
  const toFret = ofString(to.voicing.frets, note.string);
  if (leg.kind === "slide" && toFret !== null) {
    const glide: Glide = { start, end: to.start, toFret };
    return { ...note, until: to.start, glide };
  }
  return { ...note, until: start };
};

/** A string sounds until it is picked again; a note that lasts to the placement's end meets the leg. */
const soundingOut = (
  notes: readonly Note[],
  leg: Leg | undefined,
  next: Placement | undefined,
): readonly Note[] => {
  const pickedAgain = new Map<StringNumber, Tick>();
  return notes
    .toReversed()
    .map((note) => {
      const again = pickedAgain.get(note.string);
      pickedAgain.set(note.string, note.tick);
      if (again !== undefined) {
        return { ...note, until: again };
      }
      const moves = leg && leg.kind !== "hold" && next?.start === note.until;
      return moves ? leaving(note, leg, next) : note;
    })
    .toReversed();
};

/** Whether the hand comes straight from the placement before, without a silence between. */
const followsOn = (before: Placement | undefined, placement: Placement): boolean =>
  before !== undefined && before.start + before.length === placement.start;

/**
 * Every note of banjo, bass and chop with its tick. The roll starts afresh with each placement; the
 * hand leaves LEAVING_TICKS before the next one: in a slide the strings that still ring glide with
 * it and its first stroke is marked as slid into, otherwise they are let go. The song's last notes
 * ring to its end.
 */
export const arrange = (timeline: Timeline, neck: Neck, route: Route | null): Score => {
  const placements = route?.placements ?? [];
  const legInto = new Map(route?.legs.filter((leg) => !leg.seam).map((leg) => [leg.to, leg]));
  const notes = placements.flatMap((placement, index) => {
    const before = placements[index - 1];
    const next = placements[index + 1];
    const arriving = followsOn(before, placement) ? legInto.get(index) : undefined;
    return soundingOut(notesOf(timeline, neck, placement, arriving), legInto.get(index + 1), next);
  });
  return {
    meter: timeline.meter,
    length: timeline.length,
    bars: timeline.bars,
    notes,
    hits: rhythmSection(timeline),
  };
};
