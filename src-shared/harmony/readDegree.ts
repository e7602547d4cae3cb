import { words } from "../wordTable.ts";
import type { Degree, DegreeChord } from "./degree.ts";
import { plainAccidentals } from "./noteName.ts";
import { readQuality } from "./readChord.ts";
import { type Refusal, refuse } from "./refusal.ts";

/** A chord by degree as read, or why it could not be. */
export type DegreeReading =
  | {
      readonly ok: true;
      readonly chord: DegreeChord;
      /** The larger chord that it stands in for, as written; null for itself. */
      readonly standsFor: string | null;
    }
  | Refusal;

const degreeOf = (accidental: string, figure: string): Degree => ({
  number: Number(figure),
  accidental: accidental === "b" || accidental === "#" ? accidental : "",
});

/**
 * Whether a symbol is meant as a degree: it starts with a figure, or with b or # and a figure.
 * @example looksLikeDegree("b7") // => true
 */
export const looksLikeDegree = (symbol: string): boolean => /^[b#♭♯]?\d/.test(symbol);

const readBassDegree = (text: string): Degree | null => {
  const parts = /^([b#]?)([1-7])$/.exec(text);
  return parts === null ? null : degreeOf(parts[1] ?? "", parts[2] ?? "");
};

const refuseFigures = (degree: string, rest: string): Refusal | null => {
  const caret = /^[\^*](.+)$/.exec(rest);
  if (caret !== null) {
    const meant = readQuality(caret[1] ?? "");
    if (meant.kind !== "ours") return null;
    const joint = /^\d/.test(meant.quality) ? "-" : "";
    return refuse(
      words.notes.degree.hyphen(`${degree}${rest}`),
      words.notes.chord.write(`${degree}${joint}${meant.quality}`),
    );
  }
  if (!/^[\d#b]/.test(rest) || /^b?(?:5)$/.test(rest)) return null;
  if (rest === "7" || rest === "6") {
    return refuse(
      words.notes.degree.oneOrTwo(`${degree}${rest}`),
      words.notes.degree.oneOrTwoTry(degree, rest),
    );
  }
  if (/^([b#]?[1-7])+$/.test(rest)) {
    const apart = [degree, ...(rest.match(/[b#]?[1-7]/g) ?? [])].slice(0, 8).join(" ");
    return refuse(words.notes.degree.spaces, words.notes.chord.write(apart));
  }
  return null;
};

/**
 * Reads a chord called by degree: b or #, a figure 1 to 7, a quality, "/" and a bass degree. A
 * quality that starts with a figure is joined by a hyphen.
 * @example readDegree("6m") // => { ok: true, chord: { degree: { number: 6, accidental: "" }, quality: "m", bass: null }, standsFor: null }
 * @example readDegree("57") // => { ok: false, says: "57 could be one chord or two.", try: "Write 5-7 for one chord, or 5 7 for two." }
 */
export const readDegree = (symbol: string): DegreeReading => {
  const plain = plainAccidentals(symbol.trim());
  const parts = /^([b#]?)(\d)([^/]*)(?:\/(.*))?$/.exec(plain);
  const shown = plain.length > 24 ? `${plain.slice(0, 24)}…` : plain;
  if (parts === null) {
    return refuse(words.notes.degree.says(shown), words.notes.degree.try);
  }
  const [, accidental = "", figure = "", rest = "", bassText] = parts;
  if (!/[1-7]/.test(figure)) {
    return refuse(words.notes.degree.none(figure), words.notes.degree.noneTry);
  }
  const degree = degreeOf(accidental, figure);
  const name = `${accidental}${figure}`;
  const figures = refuseFigures(name, rest);
  if (figures !== null) return figures;
  if (rest === "-") {
    return refuse(words.notes.degree.stops(shown), words.notes.degree.stopsTry(name));
  }
  const reading = readQuality(rest.replace(/^-/, ""));
  if (reading.kind === "unknown") {
    return refuse(words.notes.chord.says(shown), words.notes.degree.qualities(name));
  }
  const ours = reading.kind === "ours";
  const quality = ours ? reading.quality : reading.nearest;
  const standsFor = ours ? null : plain;
  if (bassText === undefined) {
    return { ok: true, chord: { degree, quality, bass: null }, standsFor };
  }
  const bass = readBassDegree(bassText);
  if (bass === null) {
    return refuse(
      words.notes.degree.noBass(shown),
      words.notes.degree.bassTry(`${name}/${figure === "3" ? "5" : "3"}`),
    );
  }
  const own = bass.number === degree.number && bass.accidental === degree.accidental;
  return { ok: true, chord: { degree, quality, bass: own ? null : bass }, standsFor };
};
