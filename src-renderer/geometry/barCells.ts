import type { Timeline } from "../../src-shared/chart/song.ts";
import { stretchesWithin } from "./visible.ts";

/** A bar as the strip of bars shows it. */
export type BarCell = {
  readonly index: number;
  /** Chords heard in it, in order; "N.C." where none is played. */
  readonly names: readonly string[];
  /** Its first chord starts with the bar; false where it goes on from the bar before. */
  readonly fresh: boolean;
  /** Label of the section that starts here, numbered from its second time on; else null. */
  readonly section: string | null;
  /** What is wrong in its text; null where nothing is. */
  readonly mend: string | null;
};

/** A label that has come up before gets the number of this time. */
const counted = (label: string, times: Map<string, number>): string => {
  const time = (times.get(label) ?? 0) + 1;
  times.set(label, time);
  return time > 1 ? `${label} ${time}` : label;
};

/** One cell for each bar of the song as played; `toMend` says what is wrong in written bars. */
export const barCells = (
  timeline: Timeline,
  toMend: ReadonlyMap<number, string>,
): readonly BarCell[] => {
  const times = new Map<string, number>();
  return timeline.bars.map((bar) => {
    const stays = stretchesWithin(timeline.stays, bar.start, bar.start + bar.length);
    return {
      index: bar.index,
      names: stays.map((stay) => stay.chord?.name ?? "N.C."),
      fresh: stays[0] !== undefined && stays[0].start >= bar.start,
      section: bar.startsSection && bar.section !== null ? counted(bar.section, times) : null,
      mend: toMend.get(bar.written) ?? null,
    };
  });
};

/** A stretch of bars, both included. */
export type BarRange = { readonly firstBar: number; readonly lastBar: number };

/** The bars from one to another, whichever comes first. */
export const barRange = (one: number, other: number): BarRange => ({
  firstBar: Math.min(one, other),
  lastBar: Math.max(one, other),
});
