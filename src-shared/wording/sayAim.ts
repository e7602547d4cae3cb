import type { HandName } from "../route/handTable.ts";
import type { Aim, Way } from "../route/route.ts";
import type { StringSet } from "../voicing/voicing.ts";
import { words } from "../wordTable.ts";

/** A choice in words: a short name, and one sentence that a player understands. */
export type Choice = { readonly name: string; readonly says: string };

/**
 * An aim in words.
 * @example sayAim("climb").name // => "Climb"
 */
export const sayAim = (aim: Aim): Choice => words.routes.aims[aim];

/**
 * A hand in words.
 * @example sayHand("skilled").name // => "Skilled"
 */
export const sayHand = (hand: HandName): Choice => words.routes.hands[hand];

/**
 * A set of strings in words.
 * @example sayStrings("3-2-1").name // => "Top three"
 */
export const sayStrings = (strings: StringSet): Choice => words.routes.stringSets[strings];

/**
 * One place or two for each chord, in words.
 * @example sayPerChord(2).name // => "Two"
 */
export const sayPerChord = (places: 1 | 2): Choice => words.routes.places[places];

/** How far the times can be trusted; to be shown where they are. */
export const handCaution: string = words.routes.handCaution;

/**
 * How a change is made, in words.
 * @example sayWay("keep").name // => "Keep every note"
 */
export const sayWay = (way: Way): Choice => words.changes.ways[way];
