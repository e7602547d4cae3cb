import { type ChangePlace, changeOf, changePlaces } from "../practice/changePlaces.ts";
import { itemId } from "../practice/itemId.ts";
import { tempoOfEighth } from "../score/tempo.ts";
import { sayWay } from "../wording/sayAim.ts";
import { sayFingers, sayLeg } from "../wording/sayLeg.ts";
import { words } from "../wordTable.ts";
import type { Block } from "./flow.ts";
import type { HandOutSong } from "./handOut.ts";
import { partHead } from "./headings.ts";
import type { Mark } from "./page.ts";
import { line } from "./pen.ts";
import { plainType, setText, strongType, type Type, wrapText } from "./setText.ts";
import { printedChord } from "./tabNames.ts";
import type { Typefaces } from "./typefaces.ts";

const CELL = plainType(9.5);
const CHORDS = strongType(10.5);
const LABEL = plainType(8.5, "soft");
const LINE = 12.5;
const GAP = 10;
/** Shares of the width: bars, chords, the hand, in time, up to. */
const SHARES = [0.17, 0.16, 0.39, 0.18, 0.1] as const;
/** The fastest tempo that a song can be practised at. */
const FASTEST = 320;
/** Bars named one by one. */
const MOST_BARS = 6;
/** Room for what floating point adds to a tempo that is whole. */
const SPARE = 1e-6;

/**
 * The fastest whole tempo at which a change can be made; null where nothing moves, and where it is
 * faster than anything that is played.
 */
export const fastestTempo = ({ walk }: HandOutSong, { leg }: ChangePlace): number | null => {
  if (leg.shortestEighth === null) return null;
  const tempo = Math.floor(tempoOfEighth(walk.song.meter, leg.shortestEighth) + SPARE);
  return tempo > FASTEST ? null : tempo;
};

/** The bars of some places: "1, 5, 9 and 4 more". */
export const sayBars = (places: readonly ChangePlace[]): string => {
  const bars = [...new Set(places.map(({ bar }) => bar + 1))];
  const shown = bars.slice(0, MOST_BARS).join(", ");
  const rest = bars.length - MOST_BARS;
  return rest > 0 ? `${shown} ${words.handOut.andMore(rest)}` : shown;
};

/** The same move made in the same way, with every place where it is. */
const kindsOf = (song: HandOutSong): readonly (readonly ChangePlace[])[] => {
  const found = new Map<string, ChangePlace[]>();
  for (const place of changePlaces(song.walk)) {
    const key = `${itemId(changeOf(place))} ${place.leg.way}`;
    const own = found.get(key);
    if (own) own.push(place);
    else found.set(key, [place]);
  }
  return [...found.values()];
};

type Cell = { readonly text: string; readonly type: Type };

const rowOf = (song: HandOutSong, places: readonly ChangePlace[]): readonly Cell[] => {
  const [first] = places;
  if (first === undefined) return [];
  const { leg, from, to } = first;
  const fastest = fastestTempo(song, first);
  const chords = words.handOut.change(printedChord(from.chord), printedChord(to.chord));
  const round = leg.seam ? `, ${words.handOut.backToStart}` : "";
  const hand = `${sayLeg(leg, to, song.walk.neck.tuning)}. ${sayFingers(leg)}.`;
  return [
    { text: sayBars(places), type: CELL },
    { text: `${chords}${round}`, type: CHORDS },
    { text: hand, type: CELL },
    { text: sayWay(leg.way).name, type: leg.way === "too-fast" ? strongType(9.5) : CELL },
    { text: fastest === null ? words.handOut.anyTempo : `${fastest}`, type: CELL },
  ];
};

const tableRow = (
  typefaces: Typefaces,
  name: string,
  cells: readonly Cell[],
  width: number,
  height: number,
): Pick<Block, "name" | "height" | "marks"> => {
  let x = 0;
  let lines = 1;
  const marks: Mark[] = [];
  for (const [index, { text, type }] of cells.entries()) {
    const share = width * (SHARES[index] ?? 0);
    const wrapped = wrapText(typefaces, text, type, share - GAP);
    for (const [at, each] of wrapped.entries()) {
      marks.push(...setText(typefaces, each, type, x, 10 + at * height));
    }
    lines = Math.max(lines, wrapped.length);
    x += share;
  }
  const bottom = 10 + (lines - 1) * height + 5;
  return {
    name,
    height: bottom,
    marks: [...marks, line([0, bottom], [width, bottom], 0.4, "line")],
  };
};

/** Every change of the song once, in the order in which they come, with how it is made. */
export const changesPart = (
  typefaces: Typefaces,
  song: HandOutSong,
  width: number,
): readonly Block[] => {
  const kinds = kindsOf(song);
  if (kinds.length === 0) return [];
  const { handOut } = words;
  const labels = [handOut.bars, handOut.chords, handOut.hand, handOut.inTime, handOut.upTo];
  const head = labels.map((text) => ({ text, type: LABEL }));
  const matter = { kind: "matter" } as const;
  return [
    partHead(typefaces, handOut.changes, handOut.changesHint, width),
    {
      ...matter,
      ...tableRow(typefaces, handOut.changes, head, width, LINE),
      before: 2,
      keepsNext: true,
    },
    ...kinds.map((places, index): Block => {
      const name = `${handOut.changes} ${sayBars(places)}`;
      const row = tableRow(typefaces, name, rowOf(song, places), width, LINE);
      const few = index === 0 || index === kinds.length - 2 || index === kinds.length - 3;
      return { ...matter, ...row, before: 3, keepsNext: few && index < kinds.length - 1 };
    }),
  ];
};
