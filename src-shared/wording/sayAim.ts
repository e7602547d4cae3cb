import { FIVE_FRETS_BITS } from "../practice/ownHand.ts";
import type { HandName } from "../route/handTable.ts";
import type { Hand } from "../route/movement.ts";
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

/** Five frets up from the fifth take a hand so long, to ten milliseconds. */
const fiveFretsMs = ({ start, perBit }: Hand): number =>
  Math.round((start + perBit * FIVE_FRETS_BITS) / 10) * 10;

/**
 * A hand in words; `own` is the one that the player has accepted as theirs, or null.
 * @example sayHand("skilled", null).name // => "Skilled"
 * @example sayHand("default", { start: 20, perBit: 64 }).says // => "As your marks tell: five frets in about 250 ms."
 */
export const sayHand = (hand: HandName, own: Hand | null): Choice =>
  hand === "default" && own !== null
    ? { name: words.ownHand.mine, says: words.ownHand.asMarksTell(fiveFretsMs(own)) }
    : words.routes.hands[hand];

/** The hands to choose from, the slowest first: the usual one stands beside the player's own. */
export const handsToChoose = (own: Hand | null): readonly HandName[] => {
  const fixed: readonly HandName[] = ["learner", "usual", "skilled"];
  return own === null ? ["learner", "default", "skilled"] : ["default", ...fixed];
};

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
