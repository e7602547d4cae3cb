import type { Placement } from "../route/route.ts";
import { TICKS_PER_EIGHTH } from "../units.ts";
import { words } from "../wordTable.ts";
import type { Block } from "./flow.ts";
import type { Mark } from "./page.ts";
import { line, rectangle, solid } from "./pen.ts";
import { plainType, setText, strongType, widthOf } from "./setText.ts";
import { shapeSign } from "./shapeSign.ts";
import { printedChord } from "./tabNames.ts";
import type { TabBar } from "./tabSong.ts";
import type { Typefaces } from "./typefaces.ts";

const CHORD_LINE = 11;
const CHORD_SIZE = 12.5;
const ROAD_TOP = 25;
const ROAD_HEIGHT = 20;
const ROAD_FOOT: number = ROAD_TOP + ROAD_HEIGHT;
const PAD = 3;
const LEVEL = 2.2;
const NUMBER = plainType(8);
/** A slide's slope takes as long as an eighth. */
const SLOPE = TICKS_PER_EIGHTH;

type Range = { readonly low: number; readonly high: number };

type Level = { readonly placement: Placement; readonly from: number; readonly to: number };

/** The placements of some bars with the ticks in which they are held there. */
const levelsIn = (bars: readonly TabBar[], start: number, end: number): readonly Level[] => {
  const heldOn = bars[0]?.heldOn ?? null;
  const held = [...(heldOn ? [heldOn] : []), ...bars.flatMap(({ placements }) => placements)];
  return held.map((placement) => ({
    placement,
    from: Math.max(start, placement.start),
    to: Math.min(end, placement.start + placement.length),
  }));
};

const levelMarks = (
  typefaces: Typefaces,
  { placement, from, to }: Level,
  before: Level | undefined,
  xOf: (tick: number) => number,
  yOf: (fret: number) => number,
): readonly Mark[] => {
  const { voicing } = placement;
  const y = yOf(voicing.position);
  const [left, right] = [xOf(from), xOf(to)];
  const touches = before !== undefined && before.to === from;
  const fret = `${voicing.position}`;
  return [
    ...(touches
      ? [line([xOf(from - SLOPE / 2), yOf(before.placement.voicing.position)], [left + 1, y], 0.9)]
      : []),
    rectangle(left, y - LEVEL / 2, Math.max(1, right - left - PAD), LEVEL, solid),
    shapeSign(voicing.shape, left, y - 3, 7, 6),
    ...setText(typefaces, fret, NUMBER, left + 9, y - 3),
  ];
};

const chordMarks = (
  typefaces: Typefaces,
  bar: TabBar,
  xOf: (tick: number) => number,
  isFirst: boolean,
  right: number,
): readonly Mark[] => {
  const goesOn = isFirst && bar.goesOn ? [{ ...bar.goesOn, start: bar.bar.start }] : [];
  const stays = [...goesOn, ...bar.stays];
  return stays.flatMap(({ chord, start }, index) => {
    const text = printedChord(chord);
    const end = stays[index + 1]?.start ?? bar.bar.start + bar.bar.length;
    const room = Math.min(xOf(end) - 2, right) - xOf(start);
    const wanted = widthOf(typefaces, text, strongType(CHORD_SIZE));
    const size = Math.min(CHORD_SIZE, (CHORD_SIZE * room) / wanted);
    return setText(typefaces, text, strongType(size), xOf(start), CHORD_LINE);
  });
};

/** One line of the road: bars with their chords, and the hand's height on the neck under them. */
export const roadLine = (
  typefaces: Typefaces,
  bars: readonly TabBar[],
  { low, high }: Range,
  barWidth: number,
): Block => {
  const [first, last] = [bars[0], bars.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError("a line without bars");
  const start = first.bar.start;
  const end = last.bar.start + last.bar.length;
  const width = barWidth * bars.length;
  const xOf = (tick: number): number => PAD + ((tick - start) / (end - start)) * width;
  const share = (fret: number): number => (high === low ? 0.5 : (fret - low) / (high - low));
  const yOf = (fret: number): number => ROAD_FOOT - 1 - share(fret) * (ROAD_HEIGHT - 4);
  const levels = levelsIn(bars, start, end);
  const edges = bars.map((_, index) => barWidth * index);
  return {
    kind: "system",
    name: words.handOut.barsTo(first.bar.index + 1, last.bar.index + 1),
    height: ROAD_FOOT + 3,
    before: 5,
    keepsNext: false,
    marks: [
      ...[...edges, width].map((x) => line([x, 1], [x, ROAD_FOOT + 2], 0.6, "line")),
      line([0, ROAD_FOOT + 2], [width, ROAD_FOOT + 2], 0.6, "line"),
      ...bars.flatMap((bar) => chordMarks(typefaces, bar, xOf, bar === first, width)),
      ...levels.flatMap((level, index) =>
        levelMarks(typefaces, level, levels[index - 1], xOf, yOf),
      ),
    ],
  };
};
