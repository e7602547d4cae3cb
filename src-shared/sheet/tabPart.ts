import { TICKS_PER_EIGHTH } from "../units.ts";
import { words } from "../wordTable.ts";
import { breakBars } from "./breakBars.ts";
import type { Block } from "./flow.ts";
import type { HandOutSong } from "./handOut.ts";
import { paragraphs, partHead } from "./headings.ts";
import { sectionsOf } from "./passages.ts";
import { nameWidth } from "./tabNames.ts";
import { type TabBar, tabSong } from "./tabSong.ts";
import { cellWidth, TAB_GUTTER, tabSystem } from "./tabSystem.ts";
import type { Typefaces } from "./typefaces.ts";

/** An eighth is never narrower than this, so that frets of two figures stand apart. */
const LEAST_CELL = 12;
const HINT_SIZE = 9;
const SHORT_BAR_EIGHTHS = 4;

/** The width that an eighth of a bar needs for the names over it, in points. */
const cellNeeded = (typefaces: Typefaces, { stays, placements, bar }: TabBar): number => {
  const end = bar.start + bar.length;
  const starts = [
    ...stays.map(({ start, chord }) => ({ start, width: nameWidth(typefaces, chord) })),
    ...placements.map(({ start, chord }) => ({ start, width: nameWidth(typefaces, chord) })),
  ];
  const inOrder = [...new Set(starts.map(({ start }) => Number(start)))].toSorted((a, b) => a - b);
  const room = new Map(inOrder.map((start, index) => [start, (inOrder[index + 1] ?? end) - start]));
  return Math.max(
    LEAST_CELL,
    ...starts.map(
      ({ start, width }) => width / ((room.get(start) ?? bar.length) / TICKS_PER_EIGHTH),
    ),
  );
};

/** How many bars a system of these holds at most, and usually. */
const perSystem = (
  typefaces: Typefaces,
  bars: readonly TabBar[],
  width: number,
): { readonly usual: number; readonly most: number } => {
  const eighths = Math.max(...bars.map(({ bar }) => bar.length / TICKS_PER_EIGHTH));
  const cell = Math.max(...bars.map((bar) => cellNeeded(typefaces, bar)));
  const wanted = eighths <= SHORT_BAR_EIGHTHS ? 8 : 4;
  const fitting = (count: number): boolean => cellWidth(width / count, eighths) >= cell;
  let most = 1;
  while (most <= wanted && fitting(most + 1)) most += 1;
  return { usual: Math.min(wanted, most), most };
};

/** The song's tablature, straight through as it is played, a system to a block. */
export const tabPart = (
  typefaces: Typefaces,
  song: HandOutSong,
  width: number,
): readonly Block[] => {
  const tab = tabSong(song);
  const { timeline, neck } = song.walk;
  const look = { tab, meter: timeline.meter, tuning: neck.tuning };
  const room = width - TAB_GUTTER;
  const systems = sectionsOf(tab.bars).flatMap((passage) => {
    const { usual, most } = perSystem(typefaces, passage, room);
    let from = 0;
    return breakBars(passage.length, usual, most).map((count) => {
      const bars = passage.slice(from, from + count);
      from += count;
      // A short line ends where its bars do; a nearly full one is drawn to the margin.
      const barWidth = room / (count > usual / 2 ? count : usual);
      return tabSystem(typefaces, look, bars, barWidth);
    });
  });
  if (systems.length === 0) return [];
  return [
    partHead(typefaces, words.handOut.tablature, words.handOut.straightThrough, width),
    ...paragraphs(typefaces, words.handOut.tablature, words.handOut.tabSigns, width, HINT_SIZE).map(
      (block) => ({ ...block, keepsNext: true }),
    ),
    // The first two stay together: one line alone under a heading is not worth a look.
    ...systems.map((system, index) => ({
      ...system,
      keepsNext: index === 0 && systems.length > 1,
    })),
  ];
};
