import { type Chord, chordName } from "../harmony/chord.ts";
import { chordOnDegree, degreeSymbol } from "../harmony/degree.ts";
import type { Key } from "../harmony/key.ts";
import { readChord } from "../harmony/readChord.ts";
import { looksLikeDegree, readDegree } from "../harmony/readDegree.ts";
import type { Refusal } from "../harmony/refusal.ts";

/** A chord symbol of a chart as it is meant: what to write, and what sounds. */
export type ChordSymbol = {
  readonly kind: "letter" | "degree" | "silence";
  /** In canonical spelling. */
  readonly symbol: string;
  /** null for N.C. */
  readonly chord: Chord | null;
};

/** A symbol as read, or why it could not be. */
export type SymbolReading = { readonly ok: true; readonly value: ChordSymbol } | Refusal;

/** No chord. */
export const silence: ChordSymbol = { kind: "silence", symbol: "N.C.", chord: null };

/**
 * Reads what a chart may write for a chord: letters, a degree of the key, or N.C.
 * @example readSymbol("b7", { tonic: "G", mode: "major" }).ok // => true
 */
export const readSymbol = (text: string, key: Key): SymbolReading => {
  if (/^n\.?c\.?$/i.test(text)) return { ok: true, value: silence };
  if (looksLikeDegree(text)) {
    const reading = readDegree(text);
    if (!reading.ok) return reading;
    const { standsFor } = reading;
    const chord = { ...chordOnDegree(reading.chord, key), standsFor };
    const symbol = standsFor ?? degreeSymbol(reading.chord);
    return { ok: true, value: { kind: "degree", symbol, chord } };
  }
  const reading = readChord(text);
  return reading.ok
    ? {
        ok: true,
        value: {
          kind: "letter",
          symbol: chordName(reading.chord),
          chord: reading.chord,
        },
      }
    : reading;
};
