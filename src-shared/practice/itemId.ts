import type { HeldChord, Item } from "./practice.ts";

const held = ({ chord, frets }: HeldChord): string =>
  `${chord} ${frets.map((fret) => fret ?? "x").join(".")}`;

/**
 * The name by which an item is known from one day to the next, within its song. The same item always
 * has the same name, and no two have one.
 * @example itemId({ kind: "passage", firstBar: 4, lastBar: 7 }) // => "bars 4-7"
 * @example itemId({ kind: "song" }) // => "song"
 */
export const itemId = (item: Item): string => {
  switch (item.kind) {
    case "change":
      return `change ${held(item.from)} > ${held(item.to)}`;
    case "passage":
      return `bars ${item.firstBar}-${item.lastBar}`;
    case "song":
      return "song";
    case "exercise":
      return `exercise ${item.name}`;
  }
};
