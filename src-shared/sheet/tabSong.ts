import type { TimedBar, TimedStay } from "../chart/song.ts";
import { type Staff, slidesOf } from "../exchange/staffNotes.ts";
import { strokesInBars, type WrittenStroke } from "../exchange/strokesInBars.ts";
import type { Placement } from "../route/route.ts";
import type { Note } from "../score/score.ts";
import type { HandOutSong } from "./handOut.ts";

/** A bar as it is engraved. */
export type TabBar = {
  readonly bar: TimedBar;
  readonly strokes: readonly WrittenStroke[];
  /** Chords and placements that start in it, in order. */
  readonly stays: readonly TimedStay[];
  readonly placements: readonly Placement[];
  /** The chord that goes on from the bar before; null where one starts on its first beat. */
  readonly goesOn: TimedStay | null;
  /** The placement that is held on into it; null where one starts on its first beat, or none is held. */
  readonly heldOn: Placement | null;
  /** The last of its section as played, or of the song. */
  readonly ends: "section" | "song" | null;
};

/** A song cut into bars, with the slides between its notes. */
export type TabSong = {
  readonly bars: readonly TabBar[];
  readonly slides: Pick<Staff, "slidesFrom" | "slidesInto">;
  /** The note before each one that is slid into. */
  readonly slidFrom: ReadonlyMap<Note, Note>;
};

const inBars = <Starting extends { readonly bar: number }>(
  all: readonly Starting[],
): ReadonlyMap<number, readonly Starting[]> => {
  const found = new Map<number, Starting[]>();
  for (const each of all) {
    const own = found.get(each.bar);
    if (own) own.push(each);
    else found.set(each.bar, [each]);
  }
  return found;
};

const slidFrom = (notes: readonly Note[], into: ReadonlySet<Note>): ReadonlyMap<Note, Note> => {
  const last = new Map<number, Note>();
  const found = new Map<Note, Note>();
  for (const note of notes) {
    const before = last.get(note.string);
    if (before && into.has(note)) found.set(note, before);
    last.set(note.string, note);
  }
  return found;
};

/** A song's bars with everything that is engraved in them. */
export const tabSong = ({ walk }: HandOutSong): TabSong => {
  const { timeline, score, route } = walk;
  const { bars, meter, stays } = timeline;
  const strokes = strokesInBars(score.notes, bars, meter);
  const starting = inBars(stays);
  const placed = inBars(route?.placements ?? []);
  const slides = slidesOf(score.notes);
  let current: TimedStay | null = null;
  let held: Placement | null = null;
  const tabBars = bars.map((bar, index): TabBar => {
    const own = starting.get(index) ?? [];
    const goesOn = own[0]?.start === bar.start ? null : current;
    current = own.at(-1) ?? current;
    const placements = placed.get(index) ?? [];
    const lasts = held !== null && held.start + held.length > bar.start;
    const heldOn = placements[0]?.start === bar.start || !lasts ? null : held;
    held = placements.at(-1) ?? held;
    const next = bars[index + 1];
    const ends = next === undefined ? "song" : next.startsSection ? "section" : null;
    return {
      bar,
      strokes: strokes[index] ?? [],
      stays: own,
      placements,
      goesOn,
      heldOn,
      ends,
    };
  });
  return { bars: tabBars, slides, slidFrom: slidFrom(score.notes, slides.slidesInto) };
};
