import { Key as TonalKey } from "tonal";
import { words } from "../wordTable.ts";
import type { Key } from "./key.ts";
import { pitchClassOf, plainAccidentals } from "./noteName.ts";
import { type Refusal, refuse } from "./refusal.ts";

/** A key as read, or why it could not be. */
export type KeyReading = { readonly ok: true; readonly key: Key } | Refusal;

/**
 * Sharps (positive) or flats (negative) of a key's signature.
 * @example signatureOf({ tonic: "Bb", mode: "major" }) // => -2
 */
export const signatureOf = (key: Key): number =>
  key.mode === "major"
    ? TonalKey.majorKey(key.tonic).alteration
    : TonalKey.minorKey(key.tonic).alteration;

/**
 * A key as a chart's Key header writes it: "G", "Bb", "F#m".
 * @example keyName({ tonic: "F#", mode: "minor" }) // => "F#m"
 */
export const keyName = (key: Key): string => `${key.tonic}${key.mode === "minor" ? "m" : ""}`;

const usualTonics = ["C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"];
const usualMinorTonics = ["C", "C#", "D", "Eb", "E", "F", "F#", "G", "G#", "A", "Bb", "B"];

/**
 * The usual name of the key with this tonic pitch class (0 to 11) and mode: at most six sharps or
 * flats.
 * @example keyAt(10, "major").tonic // => "Bb"
 */
export const keyAt = (pitchClass: number, mode: Key["mode"]): Key => {
  const tonic = (mode === "major" ? usualTonics : usualMinorTonics)[pitchClass];
  if (tonic === undefined) throw new RangeError(`pitch class ${pitchClass} is not 0 to 11`);
  return { tonic, mode };
};

/**
 * The key on the same tonic in a mode, by its usual name where it would have more than seven sharps
 * or flats.
 * @example keyOn("Db", "minor").tonic // => "C#"
 */
export const keyOn = (tonic: string, mode: Key["mode"]): Key =>
  Math.abs(signatureOf({ tonic, mode })) > 7 ? keyAt(pitchClassOf(tonic), mode) : { tonic, mode };

/**
 * Reads a key: "G", "Bb", "Am", "F# minor", "A min", "Eb major". Keys of more than seven sharps or
 * flats are refused with their usual name; modes other than major and minor are refused.
 * @example readKey("F#m") // => { ok: true, key: { tonic: "F#", mode: "minor" } }
 */
export const readKey = (text: string): KeyReading => {
  const plain = plainAccidentals(text.trim());
  const parts = /^([A-Ga-gH])([b#]?)\s*(m|min|minor|-|maj|major|M|)$/i.exec(plain);
  const [, letter = "", accidental = "", modeText = ""] = parts ?? [];
  const minor = modeText === "m" || modeText === "-" || /^min/i.test(modeText);
  const mode = minor ? "minor" : "major";
  if (parts === null) {
    return refuse(words.notes.key.says(plain.slice(0, 24)), words.notes.key.try);
  }
  if (/^H$/i.test(letter)) {
    return refuse(words.notes.chord.h, words.notes.key.write(`B${minor ? "m" : ""}`));
  }
  const key: Key = { tonic: `${letter.toUpperCase()}${accidental}`, mode };
  if (letter !== letter.toUpperCase()) {
    return refuse(words.notes.key.small, words.notes.key.write(keyName(key)));
  }
  const usual = keyOn(key.tonic, mode);
  if (usual.tonic !== key.tonic) {
    return refuse(words.notes.key.tooMany(keyName(key)), words.notes.key.write(keyName(usual)));
  }
  return { ok: true, key };
};
