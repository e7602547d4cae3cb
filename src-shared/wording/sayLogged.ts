import type { HeldChord, Item } from "../practice/practice.ts";
import { words } from "../wordTable.ts";
import { sayItem } from "./sayPractice.ts";

/** The fret that the hand lies at: the lowest fretted one; 0 where nothing is fretted. */
const positionOf = ({ frets }: HeldChord): number => {
  const fretted = frets.filter((fret): fret is number => fret !== null && fret > 0);
  return fretted.length > 0 ? Math.min(...fretted) : 0;
};

/**
 * What was practised, where several songs and places stand side by side: a change with the frets that
 * the hand lies at.
 * @example sayLogged({ kind: "passage", firstBar: 4, lastBar: 7 }) // => "Bars 5 to 8"
 */
export const sayLogged = (item: Item): string =>
  item.kind === "change"
    ? words.progress.change(
        item.from.chord,
        positionOf(item.from),
        item.to.chord,
        positionOf(item.to),
      )
    : sayItem(item);
