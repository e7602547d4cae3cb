import type { HeldChord, Item } from "../practice/practice.ts";
import { words } from "../wordTable.ts";

/** The fret that the hand lies at: the lowest fretted one; 0 where nothing is fretted. */
const positionOf = ({ frets }: HeldChord): number => {
  const fretted = frets.filter((fret): fret is number => fret !== null && fret > 0);
  return fretted.length > 0 ? Math.min(...fretted) : 0;
};

/**
 * What is practised, in words; bars counted from 1.
 * @example sayItem({ kind: "passage", firstBar: 4, lastBar: 7 }) // => "Bars 5 to 8"
 * @example sayItem({ kind: "exercise", name: "pairs in D" }) // => "pairs in D"
 */
export const sayItem = (item: Item): string => {
  switch (item.kind) {
    case "change":
      return words.progress.change(
        item.from.chord,
        positionOf(item.from),
        item.to.chord,
        positionOf(item.to),
      );
    case "passage":
      return words.progress.bars(item.firstBar + 1, item.lastBar + 1);
    case "song":
      return words.progress.wholeSong;
    case "exercise":
      return item.name;
  }
};
