import type { StringNumber, Tuning } from "../neck/neck.ts";
import { ofString } from "../neck/pitchAt.ts";
import { tunings } from "../neck/tuningTable.ts";
import type { ShapeName, StringSet, Voicing } from "../voicing/voicing.ts";
import { words } from "../wordTable.ts";
import { anyOf } from "./anyOf.ts";

const stringsIn: Readonly<Record<StringSet, readonly StringNumber[]>> = {
  "3-2-1": [3, 2, 1],
  "4-3-2": [4, 3, 2],
  "4-3-2-1": [4, 3, 2, 1],
};

const longStrings: readonly StringNumber[] = [4, 3, 2, 1];

/** The trade's names are those of open G: elsewhere another grip lies where a name would lead. */
const openG = tunings[0];

/** Whether strings lie as far from each other as in open G, so that grips on them look alike. */
const liesAsInOpenG = (tuning: Tuning, strings: readonly StringNumber[]): boolean => {
  const above = strings.map(
    (string) => ofString(tuning.open, string) - ofString(openG.open, string),
  );
  return above.every((each) => each === above[0]);
};

const stringsOf = (voicing: Pick<Voicing, "frets">): readonly StringNumber[] =>
  longStrings.filter((string) => ofString(voicing.frets, string) !== null);

const isStraight = ({ frets }: Pick<Voicing, "frets">): boolean =>
  new Set(frets.filter((each) => each !== null)).size === 1;

/** The string that the root of a triad lies on; on the inner strings the F shape has its lower root. */
const rootString = (shape: ShapeName, strings: StringSet): StringNumber => {
  const high = { F: 1, D: 2, barre: 3 } as const;
  return shape === "F" && strings === "4-3-2" ? 4 : high[shape];
};

/** The string that has the third of a grip without a root. */
const thirdString = (voicing: Voicing): StringNumber => {
  const strings = { F: 3, barre: 2, D: voicing.frets[0] === null ? 4 : 1 } as const;
  return strings[voicing.shape];
};

/** What a grip is called, and whether that is a name ("the D shape") or says how it lies. */
export type ShapeWords = { readonly kind: "name" | "lie"; readonly says: string };

/**
 * What a grip is called. Where the strings it plays lie as far from each other as in open G it has
 * the trade's name (common practice, no published source); in any other tuning there is none, and
 * plain words say how it lies.
 */
export const shapeWords = (voicing: Voicing, tuning: Tuning): ShapeWords => {
  if (liesAsInOpenG(tuning, stringsOf(voicing))) {
    return { kind: "name", says: words.shapes.names[voicing.shape] };
  }
  if (isStraight(voicing)) {
    return { kind: "lie", says: words.shapes.across };
  }
  const { root } = voicing;
  const says =
    root === null ? words.shapes.third(thirdString(voicing)) : words.shapes.root(root.string);
  return { kind: "lie", says };
};

/** A grip in words: "D shape", "root on string 2", "one finger across". */
export const sayShape = (voicing: Voicing, tuning: Tuning): string =>
  shapeWords(voicing, tuning).says;

/** Where a voicing is: "D shape, fret 7"; the fret is the one that the index finger covers. */
export const sayVoicing = (voicing: Voicing, tuning: Tuning): string =>
  words.shapes.at(sayShape(voicing, tuning), voicing.position);

/**
 * A shape to choose, whatever chord will be held in it: the trade's name, else the string that a
 * triad's root lies on.
 * @example sayShapeChoice("D", "3-2-1", { name: "open G", open: [62, 59, 55, 50, 67] }) // => "D shape"
 * @example sayShapeChoice("F", "3-2-1", { name: "open D", open: [62, 57, 54, 50, 66] }) // => "root on string 1"
 */
export const sayShapeChoice = (shape: ShapeName, strings: StringSet, tuning: Tuning): string =>
  liesAsInOpenG(tuning, stringsIn[strings])
    ? words.shapes.names[shape]
    : words.shapes.root(rootString(shape, strings));

/**
 * Some shapes to choose from, as in "C has no ...".
 * @example sayAnyShape(["F", "D"], "3-2-1", { name: "open G", open: [62, 59, 55, 50, 67] }) // => "F shape or D shape"
 * @example sayAnyShape(["F", "D"], "3-2-1", { name: "open D", open: [62, 57, 54, 50, 66] }) // => "grip with the root on string 1 or 2"
 */
export const sayAnyShape = (
  shapes: readonly ShapeName[],
  strings: StringSet,
  tuning: Tuning,
): string =>
  liesAsInOpenG(tuning, stringsIn[strings])
    ? anyOf(shapes.map((shape) => words.shapes.names[shape]))
    : words.shapes.rootAny(anyOf(shapes.map((shape) => `${rootString(shape, strings)}`)));
