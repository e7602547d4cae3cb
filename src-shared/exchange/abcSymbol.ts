import { silence } from "../chart/chordSymbol.ts";
import { chordName } from "../harmony/chord.ts";
import { plainAccidentals } from "../harmony/noteName.ts";
import { readChord } from "../harmony/readChord.ts";
import { words } from "../wordTable.ts";

/** A chord symbol of an ABC file as a chart writes it, or null where the text is no chord. */
export type AbcSymbol = { readonly symbol: string | null; readonly left: string | null };

/** Spellings of older collections: d for diminished, a for augmented, + for a sharp bass. */
const respelled = (text: string): string =>
  plainAccidentals(text)
    .replaceAll("♮", "")
    .replace(/^([A-G][b#]?)d(7?)(?=\/|$)/, "$1dim$2")
    .replace(/^([A-G][b#]?)a(?=\/|$)/, "$1aug")
    .replace(/\/([A-Ga-g])\+$/, "/$1#")
    .replace(/\/([A-Ga-g])=$/, "/$1");

/**
 * Reads what stands in quotes over a note: "G", "D/f+", "Cd", "(E7)". Of "G(Em)", and of two lines,
 * the first chord is taken; a text that is no chord is left.
 * @example abcSymbol("D/f+") // => { symbol: "D/F#", left: null }
 */
export const abcSymbol = (text: string): AbcSymbol => {
  const [first = "", ...others] = text
    .split(/[\n;]/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
  const alternate = /^([^()]+)\((.*)\)$/.exec(first);
  const bare = (alternate?.[1] ?? first.replace(/^\((.*)\)$/, "$1")).trim();
  if (/^n\.?c\.?$/i.test(bare)) {
    return { symbol: silence.symbol, left: null };
  }
  const reading = readChord(respelled(bare));
  if (!reading.ok) {
    return { symbol: null, left: words.import.noChord(text.slice(0, 40).replaceAll("\n", " ")) };
  }
  const other = alternate?.[2] ?? others[0];
  return {
    symbol: chordName(reading.chord),
    left: other === undefined ? null : words.import.twoChords(bare, other.slice(0, 24)),
  };
};
