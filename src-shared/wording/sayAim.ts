import { FIVE_FRETS_BITS } from "../practice/ownHand.ts";
import type { HandName } from "../route/handTable.ts";
import type { Hand } from "../route/movement.ts";
import type { Aim, Way } from "../route/route.ts";
import type { StringSet } from "../voicing/voicing.ts";
import { words } from "../wordTable.ts";

/** A choice in words: a short name, and one sentence that a player understands. */
export type Choice = { readonly name: string; readonly says: string };

const aimWords: Readonly<Record<Aim, Choice>> = {
  ease: {
    name: "Ease",
    says: "Short slides, and the hand seldom re-formed.",
  },
  steady: {
    name: "Easiest hardest change",
    says: "The change that leaves least time is made as easy as it can be, then the others.",
  },
  travel: {
    name: "Shortest travel",
    says: "The hand goes the fewest millimetres, even if it is re-formed at every chord.",
  },
  region: {
    name: "One region",
    says: "Stay in the narrowest stretch of the neck that holds the song.",
  },
  climb: {
    name: "Climb",
    says: "Go up the neck through the song, and step back only where there is no other way.",
  },
  fall: {
    name: "Fall",
    says: "Come down the neck through the song, and step up only where there is no other way.",
  },
  variety: {
    name: "Variety",
    says: "A chord that comes back after one other takes another place.",
  },
};

/**
 * An aim in words.
 * @example sayAim("climb").name // => "Climb"
 */
export const sayAim = (aim: Aim): Choice => aimWords[aim];

const handWords: Readonly<Record<HandName, Choice>> = {
  learner: { name: "Learner", says: "Takes its time: five frets in about 440 ms." },
  default: { name: "Usual", says: "Five frets in about 300 ms." },
  skilled: { name: "Skilled", says: "Five frets in about 180 ms." },
  usual: { name: "Usual", says: "Five frets in about 300 ms." },
};

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
    : handWords[hand];

/** The hands to choose from, the slowest first: the usual one stands beside the player's own. */
export const handsToChoose = (own: Hand | null): readonly HandName[] => {
  const fixed: readonly HandName[] = ["learner", "usual", "skilled"];
  return own === null ? ["learner", "default", "skilled"] : ["default", ...fixed];
};

const stringWords: Readonly<Record<StringSet, Choice>> = {
  "3-2-1": { name: "Top three", says: "The closed shapes on strings 3, 2 and 1." },
  "4-3-2": { name: "Inner three", says: "Strings 4, 3 and 2: lower, and out of a singer's way." },
  "4-3-2-1": { name: "All four", says: "The full shapes, with string 4 for the thumb." },
};

/**
 * A set of strings in words.
 * @example sayStrings("3-2-1").name // => "Top three"
 */
export const sayStrings = (strings: StringSet): Choice => stringWords[strings];

/**
 * One place or two for each chord, in words.
 * @example sayPerChord(2).name // => "Two"
 */
export const sayPerChord = (places: 1 | 2): Choice =>
  places === 1
    ? { name: "One", says: "A chord keeps its place for as long as it lasts." }
    : {
        name: "Two",
        says: "A chord of two measures or more is held in two places, one after the other.",
      };

/** How far the times can be trusted; to be shown where they are. */
export const handCaution: string =
  "These times are worked out from measurements of aimed arm movements (Fitts's law), not measured on a banjo. Take them as a guide.";

const wayWords: Readonly<Record<Way, Choice>> = {
  hold: { name: "Hold", says: "Nothing moves." },
  keep: { name: "Keep every note", says: "There is time after the last note." },
  "let-one": { name: "Let the last note go", says: "Damp the last note early and be on your way." },
  open: {
    name: "Open 5th string",
    says: "The open 5th string sounds while the hand is on its way.",
  },
  "let-two": {
    name: "Let two notes go",
    says: "Damp the last two notes early and be on your way.",
  },
  "too-fast": { name: "Too fast", says: "At this tempo the hand cannot be there in time." },
};

/**
 * How a change is made, in words.
 * @example sayWay("keep").name // => "Keep every note"
 */
export const sayWay = (way: Way): Choice => wayWords[way];
