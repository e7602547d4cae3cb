import { words } from "../wordTable.ts";
import { breakBars } from "./breakBars.ts";
import type { Block } from "./flow.ts";
import type { HandOutSong } from "./handOut.ts";
import { partHead } from "./headings.ts";
import { type Passage, passagesOnce } from "./passages.ts";
import { roadLine } from "./roadLine.ts";
import { plainType, setText, strongType, widthOf } from "./setText.ts";
import { nameWidth } from "./tabNames.ts";
import { type TabBar, tabSong } from "./tabSong.ts";
import type { Typefaces } from "./typefaces.ts";

const LABEL = strongType(10.5);

/** The most bars that a line takes with all its chords' names beside each other. */
const mostBars = (
  typefaces: Typefaces,
  bars: readonly TabBar[],
  width: number,
  wanted: number,
): number => {
  const widest = Math.max(
    ...bars.map(({ stays, bar }) => {
      const shares = stays.map(({ start, chord }, index) => {
        const end = stays[index + 1]?.start ?? bar.start + bar.length;
        return nameWidth(typefaces, chord) / ((end - start) / bar.length);
      });
      return Math.max(1, ...shares);
    }),
  );
  return [wanted, 8, 4, 2].find((count) => width / count >= widest) ?? 1;
};

const labelBlock = (typefaces: Typefaces, { bars, sameAs }: Passage): readonly Block[] => {
  const section = bars[0]?.bar.section ?? null;
  const again = sameAs === null ? "" : words.handOut.sameAs(sameAs.from + 1, sameAs.to + 1);
  if (section === null && again === "") return [];
  const name = section ?? words.handOut.barsTo((bars[0]?.bar.index ?? 0) + 1, bars.length);
  const at = widthOf(typefaces, name, LABEL) + 8;
  return [
    {
      kind: "head",
      name,
      height: 12,
      before: 9,
      keepsNext: sameAs === null,
      marks: [
        ...setText(typefaces, name, LABEL, 0, 9),
        ...setText(typefaces, again, plainType(9.5, "soft"), at, 9),
      ],
    },
  ];
};

/**
 * The song on a few lines: chords in their bars, and under them how high the hand is. A section that
 * comes again with the same chords in the same places is named and not drawn again. `perLine` bars stand on
 * a line where their chords leave room.
 */
export const roadPart = (
  typefaces: Typefaces,
  song: HandOutSong,
  width: number,
  perLine: number,
): readonly Block[] => {
  const { bars } = tabSong(song);
  const placements = song.walk.route?.placements ?? [];
  const frets = placements.map(({ voicing }) => Number(voicing.position));
  const range = { low: Math.min(...frets, 22), high: Math.max(...frets, 1) };
  const passages = passagesOnce(bars);
  if (passages.length === 0) return [];
  return [
    partHead(typefaces, words.handOut.road, words.handOut.roadHint, width),
    ...passages.flatMap((passage): readonly Block[] => {
      const label = labelBlock(typefaces, passage);
      if (passage.sameAs !== null) return label;
      const most = mostBars(typefaces, passage.bars, width, perLine);
      let from = 0;
      const lines = breakBars(passage.bars.length, most, most).map((count) => {
        const own = passage.bars.slice(from, from + count);
        from += count;
        return roadLine(typefaces, own, range, width / (count > most / 2 ? count : most));
      });
      return [...label, ...lines];
    }),
  ];
};
